import type { AsideTable, FoundTable } from "./find-table.js";

/** A key to the codes of the sheet, as written beside the cases: 1 = closed, 2 = open. */
export interface CodeKey {
  /** Code in lower case to meaning. */
  readonly meanings: ReadonlyMap<string, string>;
  /** Words that say which column it is for; empty when nothing does. */
  readonly about: string;
  /** Rows in which it stands. */
  readonly rows: readonly number[];
}

const pair =
  /(?:^|[\s,;(|])(\d{1,3}|\p{L}{1,2}|[xX✓✔✗✘?*+-])\s*(?:=|:(?!\d)|–>|->|→)\s*([^,;|=:()]+?)(?=\s*(?:[,;|)]|$|\s(?:\d{1,3}|\p{Lu}{1,2})\s*[=:]))/gu;
const spaced = /(?:^|[,;|:])\s*(\d{1,2})\s*[-–.)]?\s+(\p{L}[^,;|=:\d]*?)\s*(?=[,;|]|$)/gu;
const keyNames = /^(code|codes|key|value|no\.?|number|symbol|abbreviation|abbr\.?|kode|zeichen)$/i;

/** Finds keys in the lines and tables that stand beside the cases: lines that follow each other make one key. */
export function findKeys({ setAside, tables }: Pick<FoundTable, "setAside" | "tables">): CodeKey[] {
  const keys = tables.flatMap((table) => keyOf(table) ?? []);
  let open: { meanings: Map<string, string>; about: string; rows: number[] } | undefined;
  let title = "";
  const inTables = new Set(tables.flatMap(({ lines }) => lines.map(({ row }) => row.number)));
  for (const { row, text } of setAside) {
    if (inTables.has(row)) continue;
    const { pairs, about } = pairsOf(text);
    if (pairs.length === 0 || (about === "" && open === undefined && pairs.length === 1 && !/=/.test(text))) {
      title = pairs.length === 0 ? text : "";
      open = undefined;
      continue;
    }
    const again = pairs.some(([code]) => open?.meanings.has(code));
    if (!open || about !== "" || again || row !== open.rows.at(-1)! + 1) {
      const named = about || (/^.{2,40}$/.test(title) ? title : "");
      open = { meanings: new Map(), about: named, rows: [] };
      keys.push(open);
    }
    for (const [code, meaning] of pairs) open.meanings.set(code, meaning);
    open.rows.push(row);
    title = "";
  }
  return keys.filter(({ meanings }) => meanings.size > 1);
}

/** Keys written into headings: "Success (1=yes, 0=no)", "Outcome [1 good 2 bad]". */
export function keysInHeadings(names: readonly string[], rows: readonly number[]): CodeKey[] {
  return names.flatMap((name) => {
    const inside = /[([](.*\d.*)[)\]]/.exec(name)?.[1] ?? "";
    const listed = inside.replace(/(?<=\p{L}) (?=\d\b)/gu, ", ");
    const { pairs } = pairsOf(listed);
    return pairs.length > 1 ? [{ meanings: new Map(pairs), about: name, rows }] : [];
  });
}

/** The pairs of code and meaning in one line, and the words before the first. */
function pairsOf(text: string): { readonly pairs: readonly (readonly [string, string])[]; readonly about: string } {
  if (text.length > 300) return { pairs: [], about: "" };
  let found = [...text.matchAll(pair)];
  if (found.length === 0) found = [...text.matchAll(spaced)];
  const pairs = found.map((match) => [match[1]!.toLowerCase(), match[2]!.trim()] as const);
  const about = found.length === 0 ? "" : text.slice(0, found[0]!.index).replace(/^[*#\s]+|[\s:=,(|-]+$/g, "");
  return { pairs: pairs.filter(([, meaning]) => meaning !== ""), about };
}

/** A table is a key when it has two columns, short different codes and words; a third column may name the column coded. */
export function keyOf({ names, lines, text, title }: AsideTable): CodeKey | undefined {
  const used = [...new Set(lines.flatMap(({ texts }) => texts.flatMap((cell, c) => (cell === "" ? [] : [c]))))];
  const at = used.toSorted((a, b) => a - b);
  if (at.length !== 2 || lines.length < 2) return undefined;
  const [codeAt, meaningAt] = at as [number, number];
  const codes = lines.map(({ texts }) => (texts[codeAt] ?? "").toLowerCase());
  const meanings = lines.map(({ texts }) => texts[meaningAt] ?? "");
  const coded = codes.every((code) => /^(\d{1,3}|\p{L}{1,3}|[^\p{L}\d\s])$/u.test(code));
  const worded = meanings.every((meaning) => /^\p{L}/u.test(meaning));
  if (!coded || !worded || new Set(codes).size !== codes.length) return undefined;
  const head = names[codeAt] ?? "";
  return {
    meanings: new Map(codes.map((code, i) => [code, meanings[i]!])),
    about: keyNames.test(head) || names.length === 0 ? title : head || text,
    rows: lines.map(({ row }) => row.number),
  };
}

/** Short texts of a column that may be codes. */
export function codesOf(values: readonly { readonly text: string }[]): ReadonlySet<string> {
  const texts = values.slice(0, 60).map(({ text }) => text.toLowerCase());
  return new Set(texts.filter((text) => text !== "" && text.length <= 3 && !/^(9+|-)$/.test(text)));
}

/** The key for a column: the one that names it, else the only one whose codes the column's cells are. */
export function keyFor(name: string, codes: ReadonlySet<string>, keys: readonly CodeKey[]): CodeKey | undefined {
  const words = (text: string): string[] => text.toLowerCase().match(/\p{L}{3,}/gu) ?? [];
  const mine = words(name);
  const alike = (a: string, b: string): boolean => a.startsWith(b) || b.startsWith(a);
  const covers = ({ meanings }: CodeKey): boolean => [...codes].some((code) => meanings.has(code));
  const about = keys.filter((key) => words(key.about).some((word) => mine.some((own) => alike(own, word))));
  const named = about.find(covers);
  if (named) return named;
  const free = keys.filter((key) => {
    if (words(key.about).some((word) => !/^(key|codes?|coding|legend|note|notes|legende)$/.test(word))) return false;
    return codes.size > 1 && [...codes].every((code) => key.meanings.has(code));
  });
  return free.length === 1 ? free[0] : undefined;
}
