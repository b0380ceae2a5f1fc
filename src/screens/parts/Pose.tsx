interface Props {
  readonly pose: "cleanAir" | "overPlate";
}

/** How to hold the sniffer, drawn: away from the plate, or a hand's breadth over it. The words beside it say the same. */
export function Pose({ pose }: Props) {
  return (
    <svg class="pose" viewBox="0 0 120 90" aria-hidden="true" focusable="false">
      {pose === "cleanAir" ? <Away /> : <Over />}
    </svg>
  );
}

/** The plate on one side, the sniffer high on the other, and the arm's length between them. */
function Away() {
  return (
    <>
      <path d="M4 80h44M12 80q14-14 28 0" />
      <path class="pose__steam" d="M22 62c-4-5 4-7 0-12M31 62c-4-5 4-7 0-12" />
      <g transform="translate(88 12)">
        <Sniffer />
      </g>
      <path class="pose__measure" d="M46 62L80 36M46 62l2-7M46 62l7-1M80 36l-7 1M80 36l-2 7" />
    </>
  );
}

/** The sniffer above the plate, openings down, one hand's breadth measured, the other hand cupped beside it. */
function Over() {
  return (
    <>
      <path d="M18 82h84M32 82q28-16 56 0" />
      <path class="pose__steam" d="M54 66c-4-5 4-7 0-12M66 66c-4-5 4-7 0-12" />
      <g transform="translate(47 8)">
        <Sniffer />
      </g>
      <path class="pose__measure" d="M92 38v32M88 38h8M88 70h8" />
      <path d="M24 30q-12 18 4 38" />
    </>
  );
}

function Sniffer() {
  return (
    <>
      <rect x="0" y="0" width="26" height="24" rx="5" />
      <path d="M6 24v4M13 24v4M20 24v4" />
    </>
  );
}
