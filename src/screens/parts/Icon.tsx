/** Line drawings of the app, all on a field of 28 by 28. */
const PATHS = {
  plate: "M3 19h22M6 19a8 8 0 0 1 16 0M14 8V6.5M14 6.5c-1.8-1.4 1.8-2.6 0-4.5M9 22.5h10",
  meals: "M6 3.5h13.5a2 2 0 0 1 2 2v19H8a2 2 0 0 1-2-2zM6 21.5a2 2 0 0 1 2-2h13.5M10 8h7.5M10 12h5",
  nose: "M15.5 3c.4 6-6.8 10.6-7.3 15.6-.3 3 2.4 4 4.3 2.7M12.500 21.300c1 2.300 4.500 2.600 6 .2 1.200-1.900.6-4.100-1.300-5M5 24.500c1.500-1.200 1.500-2.400 0-3.600",
  you: "M4 6.500h20v15.500H4zM8 11h6M8 14.500h8M8 18h4M19.500 11.500v0M18 14.500h2.500v3.500H18z",
  back: "M17 5l-9 9 9 9",
  steam:
    "M9 22c-3.500-3.500 3.500-6 0-10s2.500-5.500.5-8M18.500 22c-3.500-3.500 3.500-6 0-10s2.500-5.500.5-8M4 25.500h20",
  camera: "M3.500 9h5l1.800-3h7.400l1.800 3h5v14h-21zM14 11.500a4.200 4.200 0 1 0 .01 0",
  jar: "M9 3.500h10M10 3.500v4.500c-2 1-3 2.500-3 5V22a2.500 2.500 0 0 0 2.500 2.500h9A2.500 2.500 0 0 0 21 22v-9c0-2.500-1-4-3-5V3.500M7 15h14",
  sniffer:
    "M10 9.500h8a2 2 0 0 1 2 2v11a2 2 0 0 1-2 2h-8a2 2 0 0 1-2-2v-11a2 2 0 0 1 2-2zM11 13h6M11 16h6M11 19h6M14 6.500C12 5 16 3.800 14 2",
} as const;
export type IconName = keyof typeof PATHS;

/** A drawing beside words; it says nothing that the words do not. */
export function Icon({ name }: { readonly name: IconName }) {
  return (
    <svg viewBox="0 0 28 28" aria-hidden="true" focusable="false">
      <path
        d={PATHS[name]}
        fill="none"
        stroke="currentColor"
        stroke-width="2"
        stroke-linecap="round"
        stroke-linejoin="round"
      />
    </svg>
  );
}
