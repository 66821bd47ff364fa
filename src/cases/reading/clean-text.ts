// Characters that spreadsheets, web pages and word processors leave behind: all look like a space or like nothing.
const odd = /[\p{Cc}\p{Cf}\u00a0\u1680\u2000-\u200a\u2028\u2029\u202f\u205f\u3000]/u;
const nothing = /\p{Cf}/gu;
const space = /[\s\p{Cc}]+/gu;

/** A cell's text without byte-order marks, invisible signs and runs of odd spaces. The file keeps the original. */
export function cleanText(text: string): string {
  // Sheet programs mark a cell as text by an apostrophe before it.
  if (text.startsWith("'") && text.length > 1 && !text.includes("'", 1)) return cleanText(text.slice(1));
  if (!odd.test(text) && !text.includes("  ")) return text.trim();
  return text.replace(nothing, "").replace(space, " ").trim();
}
