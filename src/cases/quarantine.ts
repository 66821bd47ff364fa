/** Replaces every quarantined word in a text that may be shown. */
export type Redact = (text: string) => string;

export const withheld = "[withheld]";

/**
 * Collects what identifier columns hold, so that no part of it can be shown from another place: the notes, a line under
 * the table, a question. Words of names count from three letters, numbers from four digits.
 */
export function quarantine(texts: Iterable<string>): Redact {
  const words = new Set<string>();
  const phrases: string[] = [];
  for (const text of texts) {
    const plain = text.toLowerCase();
    let kept = false;
    for (const word of plain.match(part) ?? [])
      if (word.length >= 4 || (word.length === 3 && !digit.test(word))) {
        words.add(word);
        kept = true;
      }
    // Without a word of its own ("12-3", "A B") the text is looked for as it stands.
    if (!kept && plain.length >= 3 && phrases.length < most) phrases.push(plain);
  }
  if (words.size === 0 && phrases.length === 0) return (text) => text;
  return (text) => {
    let out = text;
    if ((text.toLowerCase().match(part) ?? []).some((word) => words.has(word)))
      out = text.replace(part, (word) => (words.has(word.toLowerCase()) ? withheld : word));
    for (const phrase of phrases)
      if (out.toLowerCase().includes(phrase)) out = out.split(new RegExp(literally(phrase), "i")).join(withheld);
    return out;
  };
}

const part = /[\p{L}\p{N}]+/gu;
const digit = /\d/;
const most = 2000;

function literally(text: string): string {
  return text.replace(/[.*+?^${}()|[\]\\]/g, "\\$&");
}
