import { parseArgs } from "node:util";

/** A command with everything it needs. */
export type Command =
  | {
      readonly kind: "assess";
      readonly file: string;
      readonly split: "plate" | "occasion";
      readonly folds: number;
      /** File of folds that were dealt elsewhere, instead of a number of them. */
      readonly givenFolds: string | undefined;
      readonly seed: number;
      readonly groups: readonly string[] | undefined;
      readonly acceptedMissRate: number;
      readonly jsonOut: string | undefined;
      readonly reportOut: string | undefined;
    }
  | {
      readonly kind: "teach";
      readonly file: string;
      readonly out: string;
      readonly seed: number;
      readonly name: string;
      readonly split: "plate" | "occasion";
      readonly groups: readonly string[] | undefined;
    }
  | {
      readonly kind: "refresh";
      readonly nose: string;
      readonly fresh: string;
      readonly old: string | undefined;
      readonly out: string | undefined;
      readonly name: string;
      readonly seed: number;
    }
  | {
      readonly kind: "transfer";
      readonly nose: string;
      readonly first: string;
      readonly second: string;
      readonly out: string | undefined;
      readonly name: string;
    }
  | {
      readonly kind: "check";
      readonly nose: string;
      readonly file: string;
      readonly groups: readonly string[] | undefined;
      readonly acceptedMissRate: number;
    }
  | { readonly kind: "help" };

export const USAGE = `nidor: smell what is on a plate, and know when the answer is worthless

  nidor assess FILE [--split plate|occasion] [--folds K] [--given-folds FOLDS] [--seed N]
                    [--group NAME]... [--accepted-miss-rate R] [--json OUT] [--report OUT]
      cross-validate a sniff file: every sniff is judged by a nose that never saw its plate (or occasion);
      --given-folds takes the folds from a JSON file, {"group": {"sniff id": 0, ...}, ...}, so that the scores can be
      set beside those of another tool on the same splits; --folds then says only into how many lots the dishes are
      dealt that are left out to see what unknown food does;
      --json writes the answers sniff by sniff, --report all numbers of the printed report
  nidor teach FILE --out NOSE [--seed N] [--name NAME] [--split plate|occasion] [--group NAME]...
      teach a nose from the samples of a sniff file
  nidor refresh NOSE FRESH [--old SAMPLES] [--out NOSE] [--seed N] [--name NAME]
      bring an old nose up to date with a few fresh samples, and print what that gains: each fresh plate is judged by
      the old nose and by one refreshed without it; --old gives the samples that the old nose was taught
  nidor transfer NOSE FIRST SECOND [--out NOSE] [--name NAME]
      move a nose to another sniffer by the plates or jars that both sniffed (the same plate name in both files), and
      print what that gains on pairs left out one by one; further plates of SECOND with known groups are evidence
  nidor check NOSE FILE [--group NAME]... [--accepted-miss-rate R]
      findings of a nose for the sniffs of a file, one JSON line a sniff
  nidor --help
      this text

Exit codes: 0 done; 1 a line or file was refused, or nothing could be taught; 2 the command was not understood.
`;

/** What the design calls the usual choice; a person may set another in the app. */
const USUAL_FOLDS = 5;
const USUAL_SEED = 1;
const USUAL_MISS_RATE = 0.1;

/**
 * Understands the words after `nidor`.
 *
 * @returns the command, or in words why it was not understood
 */
export function commandLine(
  words: readonly string[],
): Command | { readonly kind: "wrong"; readonly why: string } {
  try {
    const { values, positionals } = parseArgs({
      args: [...words],
      allowPositionals: true,
      options: {
        split: { type: "string", default: "plate" },
        "given-folds": { type: "string" },
        folds: { type: "string", default: String(USUAL_FOLDS) },
        seed: { type: "string", default: String(USUAL_SEED) },
        group: { type: "string", multiple: true },
        "accepted-miss-rate": { type: "string", default: String(USUAL_MISS_RATE) },
        json: { type: "string" },
        report: { type: "string" },
        out: { type: "string" },
        old: { type: "string" },
        name: { type: "string", default: "my nose" },
        help: { type: "boolean", short: "h" },
      },
    });
    if (values.help === true) return { kind: "help" };
    const [kind, ...files] = positionals;
    const common = { groups: values.group, seed: whole("--seed", values.seed, 0) };
    const split = splitOf(values.split);
    const acceptedMissRate = fraction("--accepted-miss-rate", values["accepted-miss-rate"]);
    if (kind === "assess" && files.length === 1) {
      const folds = whole("--folds", values.folds, 2);
      const givenFolds = values["given-folds"];
      const out = { jsonOut: values.json, reportOut: values.report };
      return { kind, file: files[0] ?? "", split, folds, givenFolds, acceptedMissRate, ...out, ...common };
    }
    if (kind === "teach" && files.length === 1) {
      if (values.out === undefined) return { kind: "wrong", why: "teach needs --out NOSE" };
      return { kind, file: files[0] ?? "", out: values.out, name: values.name, split, ...common };
    }
    if (kind === "refresh" && files.length === 2) {
      const { old, out, name } = values;
      return { kind, nose: files[0] ?? "", fresh: files[1] ?? "", old, out, name, seed: common.seed };
    }
    if (kind === "transfer" && files.length === 3) {
      const [nose = "", first = "", second = ""] = files;
      return { kind, nose, first, second, out: values.out, name: values.name };
    }
    if (kind === "check" && files.length === 2)
      return { kind, nose: files[0] ?? "", file: files[1] ?? "", groups: values.group, acceptedMissRate };
    return { kind: "wrong", why: kind === undefined ? "no command" : `cannot do "${positionals.join(" ")}"` };
  } catch (cause) {
    return { kind: "wrong", why: cause instanceof Error ? cause.message : String(cause) };
  }
}

function whole(name: string, text: string, least: number): number {
  const value = Number(text);
  if (text.trim() === "" || !Number.isSafeInteger(value) || value < least)
    throw new RangeError(`${name} must be a whole number of at least ${least}, got "${text}"`);
  return value;
}

function fraction(name: string, text: string): number {
  const value = Number(text);
  if (text.trim() === "" || !(value > 0 && value < 1))
    throw new RangeError(`${name} must lie between 0 and 1, got "${text}"`);
  return value;
}

function splitOf(text: string): "plate" | "occasion" {
  if (text !== "plate" && text !== "occasion")
    throw new RangeError(`--split must be plate or occasion, got "${text}"`);
  return text;
}
