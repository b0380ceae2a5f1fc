/** A catalogue that notes which of its words are read, by dotted path. */
export function recordReads<T extends object>(catalogue: T): { catalogue: T; read: Set<string> } {
  const read = new Set<string>();
  const wrap = (value: object, prefix: string): object =>
    new Proxy(value, {
      get: (target, key) => {
        const child: unknown = Reflect.get(target, key);
        if (typeof key !== "string") return child;
        const path = prefix === "" ? key : `${prefix}.${key}`;
        // A list is said as a whole.
        if (Array.isArray(child)) child.forEach((_, i) => read.add(`${path}.${i}`));
        else if (typeof child === "object" && child !== null) return wrap(child, path);
        else read.add(path);
        return child;
      },
    });
  return { catalogue: wrap(catalogue, "") as T, read };
}
