import type { Store } from "../../src/store/store.js";

/** One fact of the contract. */
export interface ContractFact {
  readonly name: string;
  readonly check: (store: Store, another: () => Promise<Store>) => Promise<void>;
}

/** A fact under its name. */
export const fact = (name: string, check: ContractFact["check"]): ContractFact => ({ name, check });

/** Deep equality by sorted JSON; bytes count as arrays. */
export function same(actual: unknown, expected: unknown): void {
  const [left, right] = [stable(actual), stable(expected)];
  if (left !== right) throw new Error(`got ${left}, expected ${right}`);
}

function stable(value: unknown): string {
  return JSON.stringify(value, (_key, member: unknown) => {
    if (member instanceof Uint8Array) return [...member];
    if (typeof member !== "object" || member === null || Array.isArray(member)) return member;
    return Object.fromEntries(Object.entries(member).sort(([a], [b]) => (a < b ? -1 : 1)));
  });
}

/** Ids of a page, in its order. */
export const ids = (list: { readonly items: readonly { readonly id: string }[] }) =>
  list.items.map(({ id }) => id);
