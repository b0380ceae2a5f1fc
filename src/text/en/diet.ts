/** What stands whatever the dish: what no nose can tell, what to do instead, what lists and labels mean. */
export const diet = {
  standing: {
    noSmell:
      "Allergens are proteins and have no smell. A sniff cannot see traces, gluten or lactose, and says nothing about allergens.",
    steam: "Do not hold your face or the sniffer over a steaming dish: steam can carry protein.",
    askAndTell:
      "Always tell the staff and always ask: get the ingredients in writing, and talk them through with somebody who knows.",
    inDoubt: "If in doubt, do not eat it.",
    adrenaline: "Carry your prescribed adrenaline and your action plan.",
    crossContact:
      "Shared fryers, grills, boards, oil and flour dust carry traces. Menus and labels can be wrong, and recipes change.",
    noDevice: "This is no medical device. It is a help, not a guarantee.",
  },
  emergency: (where: string) =>
    `In an emergency follow your action plan and call the local emergency number at once${where}. Know it before you eat.`,
  emergencyNumbers: (place: string, numbers: string) => ` (${place}: ${numbers})`,
  numberIn: (number: string, country: string) => `${number} in ${country}`,
  countries: { AU: "Australia", NZ: "New Zealand" },
  noTraces: "a claim is no statement about traces",
  legal: {
    listed: (place: string) => `on the allergen list (${place})`,
    partly: (place: string) => `only some kinds of it are on the allergen list (${place})`,
    notListed: (place: string) => `not on the allergen list (${place}): nobody has to name it there, so ask`,
    exempt: (place: string, exception: string) =>
      `exempt from being named under the list (${place}): “${exception}”`,
    item: (number: string, text: string) => `item ${number}: “${text}”`,
    unnumbered: (text: string) => `“${text}”`,
    recommended: "recommended only",
    national: "left to each country",
  },
  claimLimit: (claim: string, limit: string) =>
    `“${claim}” on a label: ${limit}. It says nothing about an open kitchen.`,
};
