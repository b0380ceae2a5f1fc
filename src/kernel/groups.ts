/** What is known of one food group on one plate. A group that is not named is unknown. */
export type GroupTruth = "present" | "absent" | "unknown";

/** Food groups by name, as in the sniff file. */
export type GroupTruths = Readonly<Record<string, GroupTruth>>;

/** The food groups that the app offers; a sniff file may name others. */
export const FOOD_GROUPS = ["meat", "fish", "shellfish", "dairy", "egg", "nut", "soya", "alcohol"] as const;
export type FoodGroup = (typeof FOOD_GROUPS)[number];
