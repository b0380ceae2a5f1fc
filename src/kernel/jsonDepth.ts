const QUOTE = '"';

/** Do brackets in this JSON text stand within brackets more than `limit` deep? Strings are passed over. */
export function deeperThan(text: string, limit: number): boolean {
  let depth = 0;
  for (let at = 0; at < text.length; at += 1) {
    const sign = text[at];
    if (sign === QUOTE) at = endOfString(text, at);
    else if (sign === "{" || sign === "[") depth += 1;
    else if (sign === "}" || sign === "]") depth -= 1;
    if (depth > limit) return true;
  }
  return false;
}

/** Where the closing quote stands; the end of the text if it is missing. */
function endOfString(text: string, opening: number): number {
  let closing = text.indexOf(QUOTE, opening + 1);
  while (closing >= 0 && isEscaped(text, closing)) closing = text.indexOf(QUOTE, closing + 1);
  return closing < 0 ? text.length : closing;
}

function isEscaped(text: string, at: number): boolean {
  let backslashes = 0;
  while (text[at - 1 - backslashes] === "\\") backslashes += 1;
  return backslashes % 2 === 1;
}
