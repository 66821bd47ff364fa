import { plainText, spanText, type Section, type TextTable } from "./text.js";

/** One printed line that says something else than before; null where it was not, or is no longer, printed. */
export interface MovedNumber {
  /** The question of the page that it answers. */
  readonly question: string;
  /** Row and column of a table ("III, Succeeded"); empty for a sentence. */
  readonly line: string;
  readonly before: string | null;
  readonly after: string | null;
}

/**
 * What the page says otherwise than before: sentences and table cells whose words differ, in reading order. Sections are
 * matched by id, sentences by their words without the numbers and then by place, cells by caption, row and column.
 */
export function movedNumbers(before: readonly Section[], after: readonly Section[]): MovedNumber[] {
  const ids = [...after.map(({ id }) => id), ...before.map(({ id }) => id)];
  return [...new Set(ids)].flatMap((id) => {
    const [old, now] = [before, after].map((page) => page.find((section) => section.id === id));
    const question = (now ?? old)!.question;
    const pairs = [...movedSentences(sentences(old), sentences(now)), ...movedCells(cells(old), cells(now))];
    return pairs.map((pair) => ({ question, ...pair }));
  });
}

type Moved = Omit<MovedNumber, "question">;

function sentences(section: Section | undefined): string[] {
  return section === undefined ? [] : [...section.answer, ...section.cautions].map(plainText);
}

/** Sentences that stand in both are left out; the rest pair by wording, then by place. */
function movedSentences(before: readonly string[], after: readonly string[]): Moved[] {
  let old = before.filter((text) => !after.includes(text));
  const now = after.filter((text) => !before.includes(text));
  const pair = (alike: (text: string) => string | undefined) => (text: string) => {
    const match = alike(text);
    if (match !== undefined) old = old.filter((one) => one !== match);
    return match;
  };
  const byWords = now.map(pair((text) => old.find((one) => wording(one) === wording(text))));
  const matched = now.map((text, i) => byWords[i] ?? pair(() => old[0])(text));
  return [
    ...now.map((text, i): Moved => ({ line: "", before: matched[i] ?? null, after: text })),
    ...old.map((text): Moved => ({ line: "", before: text, after: null })),
  ];
}

function wording(text: string): string {
  return text.replace(/[\u2212-]?\d+(?:[.,]\d+)*/g, "#");
}

/** Cells by caption, row and column; equal rows of one table are told apart by their order. */
function cells(section: Section | undefined): Map<string, { readonly line: string; readonly text: string }> {
  const found = new Map<string, { line: string; text: string }>();
  for (const table of section?.tables ?? []) for (const [key, cell] of cellsOf(table)) found.set(key, cell);
  return found;
}

function cellsOf({ caption, head, rows }: TextTable): [string, { line: string; text: string }][] {
  const seen = new Map<string, number>();
  return rows.flatMap(([label, ...texts]) => {
    const row = label === undefined ? "" : spanText(label);
    const nth = (seen.get(row) ?? 0) + 1;
    seen.set(row, nth);
    return texts.map((span, i): [string, { line: string; text: string }] => {
      const column = head[i + 1] ?? "";
      const line = [row, column].filter((word) => word !== "").join(", ");
      return [JSON.stringify([wording(caption), row, nth, column, i]), { line, text: spanText(span) }];
    });
  });
}

function movedCells(before: ReturnType<typeof cells>, after: ReturnType<typeof cells>): Moved[] {
  return [...new Set([...after.keys(), ...before.keys()])].flatMap((key): Moved[] => {
    const [old, now] = [before.get(key), after.get(key)];
    if (old?.text === now?.text) return [];
    return [{ line: (now ?? old)!.line, before: old?.text ?? null, after: now?.text ?? null }];
  });
}
