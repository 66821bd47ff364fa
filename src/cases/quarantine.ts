/** Replaces every quarantined word in a text that may be shown. */
export type Redact = (text: string) => string;

export const withheld = "[withheld]";

/**
 * Collects what identifier columns hold, so that no part of it can be shown from another place: the notes, a line under
 * the table, a question. Words of names count from three letters, numbers from four digits.
 */
export function quarantine(texts: Iterable<string>): Redact {
  const words = new Set<string>();
  const whole: string[] = [];
  for (const text of texts) {
    for (const word of wordsOf(text)) if (word.length >= (/\d/.test(word) ? 4 : 3)) words.add(word);
    const plain = text.toLowerCase();
    if (wordsOf(text).every((word) => !words.has(word)) && plain.length >= 3) whole.push(plain);
    else if (/[^\p{L}\p{N}]/u.test(text)) words.add(plain);
  }
  if (words.size === 0 && whole.length === 0) return (text) => text;
  const spelled = whole.slice(0, 2000);
  return (text) => {
    let out = text.replace(token, (found) =>
      words.has(found.toLowerCase())
        ? withheld
        : found.replace(part, (word) => (words.has(word.toLowerCase()) ? withheld : word)),
    );
    for (const phrase of spelled)
      if (out.toLowerCase().includes(phrase)) out = out.split(new RegExp(escape(phrase), "i")).join(withheld);
    return out;
  };
}

const token = /[^\s"“”„|]+/gu;
const part = /[\p{L}\p{N}]+/gu;

function wordsOf(text: string): string[] {
  return text.toLowerCase().match(part) ?? [];
}

function escape(text: string): string {
  return text.replace(/[.*+?^${}()|[\]\\]/g, "\\$&");
}
