import { recipeOf } from "../features/recipe.js";
import type { Nose } from "../nose/nose.js";
import type { Sniff } from "../sniff/sniff.js";

/** The model card of the demo nose, in Markdown; all numbers come from the run that made the nose. */
export function modelCard(
  nose: Nose,
  sniffs: readonly Sniff[],
  fileCharacters: number,
  reports: readonly string[],
): string {
  const dishes = [...new Set(sniffs.map(({ dish }) => dish))].sort();
  const occasions = new Set(sniffs.map(({ occasion }) => occasion)).size;
  return `# The demo nose and its samples

**Not for real food.** Everything here was made by the virtual sniffer: invented dishes at an invented night market,
smelled by a model of a sensor. The nose knows that model and nothing else. It must never be used to decide about a
real plate, and no finding of it says anything about allergens.

## What is here
- \`demo.sniffs.jsonl\`: ${sniffs.length} sniffs of ${nose.platesTaught} virtual plates on ${occasions} evenings, in the sniff format. Made by
  \`npx tsx src/cli/makeDemoSamples.ts\`.
- \`demo.nose.json\`: the nose taught from them (${Math.round(fileCharacters / 1024)} KB). Made, with this card, by
  \`npx tsx src/cli/makeDemoNose.ts\`; the seed is fixed, so a second run gives the same nose.

Dishes: ${dishes.join(", ")}.

## How it was taught
- Sniffer: ${nose.sniffer.id}, ${nose.sniffer.channels.length} channels.
- Features: recipe ${nose.recipe}, ${recipeOf(nose.recipe)?.name ?? "unknown"}, chosen among ${nose.report.recipes.length} by held-out log loss.
- Model: ${nose.chosen}, chosen the same way among small nets, logistic regression, a shrinkage discriminant, trees,
  nearest neighbours, kernel regressions on two views of a sniff and their mixture.
- It answers from ${nose.horizons.map(({ fromMs }) => `${Math.round(fromMs / 1000)} s`).join(", ")} of headspace, each calibrated on its own.

| group | plates with | plates without |
|---|---|---|
${nose.groups.map(({ name, platesPresent, platesAbsent }) => `| ${name} | ${platesPresent} | ${platesAbsent} |`).join("\n")}

## How good it is on virtual plates that it never saw
\`npm run nidor -- assess models/demo.sniffs.jsonl\` prints:

\`\`\`
${reports[0] ?? ""}\`\`\`

Held out by whole evenings (\`--split occasion\`); servings of one dish on one evening then count as one:

\`\`\`
${reports[1] ?? ""}\`\`\`

## Limits
- A virtual sniffer has no poisoned sensor, no kitchen fan and no cook; real sniffs are harder.
- Groups with few plates are always *uncertain* towards *not smelled*: so few plates cannot show the accepted miss rate.
`;
}
