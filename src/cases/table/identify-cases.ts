import { readSide } from "../values/read-side.js";
import { plainFacts } from "../values/reading.js";
import type { Line } from "./find-table.js";

/** Names of a case that may be shown, and its place among the child's limbs. */
export interface CaseName {
  readonly id: string;
  readonly child: string;
  /** Study number as typed, "" when there is none. */
  readonly typed: string;
}

export interface IdColumns {
  readonly id: number | undefined;
  readonly child: number | undefined;
  /** Identifier columns that together tell children apart when nothing else does; their values are never returned. */
  readonly person: readonly number[];
  readonly side: number | undefined;
  /** Numbers as typed that an answer gives to a child of its own. */
  readonly apart?: ReadonlySet<string>;
  /** Column with the name of the sheet, and the name as it may be shown, where each sheet numbers its cases anew. */
  readonly sheet?: { readonly at: number; readonly shown: (name: string) => string };
}

/**
 * Names each case and its child. "H020" and "H020b", "H020 L" and "H020 R" are one child; so are equal numbers with
 * different sides. Without a study number new numbers are given in the order of the rows.
 */
export function identifyCases(lines: readonly Line[], columns: IdColumns): CaseName[] {
  const typed = lines.map(({ texts }) => (columns.id === undefined ? "" : (texts[columns.id] ?? "")));
  const bases = childNumbers(typed, columns.apart);
  const people = new Map<string, string>();
  const children = lines.map(({ row, texts }, i) => {
    const named = columns.child === undefined ? "" : (texts[columns.child] ?? "");
    if (named !== "") return named + sheetOf(texts, columns);
    if (bases[i] !== "") return bases[i]! + sheetOf(texts, columns);
    const person = columns.person.map((at) => (texts[at] ?? "").toLowerCase()).join(" | ");
    return !/[\p{L}\p{N}]/u.test(person) ? `row ${row.number}` : numbered(people, person, "child");
  });
  const proposed = typed.map((id, i) => {
    if (id !== "") return id + sheetOf(lines[i]!.texts, columns);
    return columns.id === undefined ? `case ${i + 1}` : `row ${lines[i]!.row.number}`;
  });
  const ids = distinctIds(proposed, lines, columns.side);
  return ids.map((id, i) => ({
    id,
    child: columns.id === undefined && children[i]!.startsWith("row ") ? `child of ${id}` : children[i]!,
    typed: typed[i]!,
  }));
}

function sheetOf(texts: readonly string[], { sheet }: IdColumns): string {
  return sheet === undefined ? "" : ` (${sheet.shown(texts[sheet.at] ?? "")})`;
}

function numbered(known: Map<string, string>, key: string, word: string): string {
  const found = known.get(key) ?? `${word} ${known.size + 1}`;
  known.set(key, found);
  return found;
}

const sideSuffix = /^(.*\d)[ _./-]?\(?(l|r|lt|rt|left|right)\)?$/i;
const letterSuffix = /^(.*\d)[ _./-]?\(?([ab])\)?$/i;
export const wordSuffix =
  /^(.*\d)[ _./-]*\(?(bis|ter|2nd|second|other|contra\w*|opp\w*|bilat\w*)\)?( (side|limb|arm|shoulder|hip|knee))?$/i;
const numberSuffix = /^(.*\d)[./_-]([12])$/;

/** Study numbers without the sign of the limb; a letter or number counts as one only beside its sibling. */
function childNumbers(ids: readonly string[], apart: ReadonlySet<string> = new Set()): string[] {
  const patterns = [sideSuffix, letterSuffix, numberSuffix, wordSuffix];
  if (!ids.some((id) => patterns.some((pattern) => pattern.test(id)))) return [...ids];
  const known = new Set(ids.map((id) => id.toLowerCase()));
  const suffixes = new Map<string, Set<string>>();
  for (const id of ids)
    for (const pattern of [letterSuffix, numberSuffix]) {
      const match = pattern.exec(id);
      if (!match) continue;
      const base = match[1]!.toLowerCase();
      suffixes.set(base, (suffixes.get(base) ?? new Set()).add(match[2]!.toLowerCase()));
    }
  return ids.map((id) => {
    if (apart.has(id)) return id;
    const side = sideSuffix.exec(id);
    if (side) return side[1]!;
    for (const pattern of [letterSuffix, numberSuffix, wordSuffix]) {
      const match = pattern.exec(id);
      const base = match?.[1]!.toLowerCase();
      if (base !== undefined && (known.has(base) || (suffixes.get(base)?.size ?? 0) > 1)) return match![1]!;
    }
    return id;
  });
}

/** Equal numbers are told apart by side, else by row. */
function distinctIds(ids: readonly string[], lines: readonly Line[], side: number | undefined): string[] {
  const repeated = repeatedOf(ids);
  if (repeated.size === 0) return [...ids];
  const withSide = ids.map((id, i) => {
    const value = repeated.has(id) && side !== undefined ? sideOf(lines[i]!.texts[side] ?? "") : "";
    return value === "" ? id : `${id} ${value}`;
  });
  const again = repeatedOf(withSide);
  return withSide.map((id, i) => (again.has(id) ? `${id} (row ${lines[i]!.row.number})` : id));
}

function repeatedOf(ids: readonly string[]): ReadonlySet<string> {
  const seen = new Set<string>();
  const repeated = new Set<string>();
  for (const id of ids) {
    if (seen.has(id)) repeated.add(id);
    seen.add(id);
  }
  return repeated;
}

/** A side plain enough to name a limb by, before any answer. */
function sideOf(text: string): string {
  const { value } = readSide(text, plainFacts, { text });
  return value.kind === "text" ? value.text : "";
}
