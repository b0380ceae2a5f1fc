import type { Words } from "../text/catalogue.js";
import { listText } from "../text/formats.js";

/** The group's name for a heading; a name from elsewhere stands as it is. */
export function groupName(group: string, { text }: Words<"common">): string {
  return text.common.groups[group] ?? group;
}

/** Several groups within a sentence, such as "meat, fish and egg". */
export function groupsInSentence(groups: readonly string[], words: Words<"common">): string {
  const names = groups.map((group) => words.text.common.groupInSentence(groupName(group, words)));
  return listText(names, words.formats);
}

/** Several groups where a heading begins, such as "Meat, fish and egg". */
export function groupsInHeading(groups: readonly string[], words: Words<"common">): string {
  const names = groups.map((group, i) => {
    const name = groupName(group, words);
    return i === 0 ? name : words.text.common.groupInSentence(name);
  });
  return listText(names, words.formats);
}
