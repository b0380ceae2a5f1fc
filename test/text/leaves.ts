/** Every word of a catalogue by its dotted path; functions count as words. */
export function leavesOf(value: object, prefix = ""): Map<string, unknown> {
  const leaves = new Map<string, unknown>();
  for (const [key, child] of Object.entries(value)) {
    const path = prefix === "" ? key : `${prefix}.${key}`;
    if (typeof child === "object" && child !== null) {
      for (const [inner, leaf] of leavesOf(child, path)) leaves.set(inner, leaf);
    } else leaves.set(path, child);
  }
  return leaves;
}
