/** Whether the link was dropped while an answer was on its way: then, and only then, the answer may fail. */

export interface LinkWatch {
  /** The phone is connected from now on. */
  up(): void;
  /** The peripheral is out of range from now on. */
  down(): void;
  /** Which link a question came over; one that comes late, after the drop, belongs to the link that was dropped. */
  now(): number;
  /**
   * Answers what the phone asked over a link.
   *
   * @param since - `now` when the question came
   * @returns false where nobody asks any more
   * @throws what `send` throws, unless that link has been dropped, or the browser or its radio is closed
   */
  answer(since: number, send: () => Promise<unknown>): Promise<boolean>;
}

/** What the DevTools protocol says of an answer that nobody waits for. */
const NOBODY_ASKS = /Failed to simulate/;
/** A test that is over closes the browser or its radio; what the phone asked last is then nobody's business. */
const CLOSED = /has been closed|BluetoothEmulation not enabled/;

export function watchLink(): LinkWatch {
  let link = 0;
  let isUp = false;
  return {
    up: () => {
      link += 1;
      isUp = true;
    },
    down: () => {
      isUp = false;
    },
    now: () => link,
    async answer(since, send) {
      try {
        await send();
        return true;
      } catch (cause) {
        const message = cause instanceof Error ? cause.message : "";
        const isDropped = link !== since || !isUp;
        if (CLOSED.test(message) || (isDropped && NOBODY_ASKS.test(message))) return false;
        throw cause;
      }
    },
  };
}
