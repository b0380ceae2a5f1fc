/** Runs one task at a time, in the order asked. */
export type InTurn = <T>(task: () => Promise<T>) => Promise<T>;

/**
 * A queue for GATT calls: the browser may refuse one while another runs.
 *
 * @see Web Bluetooth draft, issue 188: sites must serialise
 */
export function makeInTurn(): InTurn {
  let tail: Promise<unknown> = Promise.resolve();
  return (task) => {
    const result = tail.then(task);
    tail = result.catch(() => undefined);
    return result;
  };
}
