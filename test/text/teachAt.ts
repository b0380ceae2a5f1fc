/** The page of teaching with one sample, whatever the teaching itself is at. */
export const TEACH = {
  samples: 1,
  plates: 1,
  name: "",
  refresh: null,
  how: "anew",
  connectedSniffer: null,
  acceptedMissRate: 0.1,
} as const;
