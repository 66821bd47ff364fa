import type { Value } from "../types.js";
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
  /** Identifier column that tells children apart when nothing else does; its values are never returned. */
  readonly person: number | undefined;
  readonly sides: readonly Value[];
}

/**
 * Names each case and its child. "H020" and "H020b", "H020 L" and "H020 R" are one child; so are equal numbers with
 * different sides. Without a study number new numbers are given in the order of the rows.
 */
export function identifyCases(lines: readonly Line[], columns: IdColumns): CaseName[] {
  const typed = lines.map(({ texts }) => (columns.id === undefined ? "" : (texts[columns.id] ?? "")));
  const bases = childNumbers(typed);
  const people = new Map<string, string>();
  const children = lines.map(({ row, texts }, i) => {
    const named = columns.child === undefined ? "" : (texts[columns.child] ?? "");
    if (named !== "") return named;
    if (bases[i] !== "") return bases[i]!;
    const person = columns.person === undefined ? "" : (texts[columns.person] ?? "").toLowerCase();
    return person === "" ? `row ${row.number}` : numbered(people, person, "child");
  });
  const proposed = typed.map((id, i) => {
    if (id !== "") return id;
    return columns.id === undefined ? `case ${i + 1}` : `row ${lines[i]!.row.number}`;
  });
  const ids = distinctIds(proposed, lines, columns.sides);
  return ids.map((id, i) => ({
    id,
    child: columns.id === undefined && children[i]!.startsWith("row ") ? `child of ${id}` : children[i]!,
    typed: typed[i]!,
  }));
}

function numbered(known: Map<string, string>, key: string, word: string): string {
  const found = known.get(key) ?? `${word} ${known.size + 1}`;
  known.set(key, found);
  return found;
}

const sideSuffix = /^(.*\d)[ _./-]?\(?(l|r|lt|rt|left|right)\)?$/i;
const letterSuffix = /^(.*\d)[ _./-]?\(?([ab])\)?$/i;
const numberSuffix = /^(.*\d)[./_-]([12])$/;

/** Study numbers without the sign of the limb; a letter or number counts as one only beside its sibling. */
function childNumbers(ids: readonly string[]): string[] {
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
    const side = sideSuffix.exec(id);
    if (side) return side[1]!;
    for (const pattern of [letterSuffix, numberSuffix]) {
      const match = pattern.exec(id);
      const base = match?.[1]!.toLowerCase();
      if (base !== undefined && (known.has(base) || suffixes.get(base)!.size > 1)) return match![1]!;
    }
    return id;
  });
}

/** Equal numbers are told apart by side, else by row. */
function distinctIds(ids: readonly string[], lines: readonly Line[], sides: readonly Value[]): string[] {
  const counts = new Map<string, number>();
  for (const id of ids) counts.set(id, (counts.get(id) ?? 0) + 1);
  const withSide = ids.map((id, i) => {
    const side = sides[i];
    return counts.get(id)! > 1 && side?.kind === "text" ? `${id} ${side.text}` : id;
  });
  const again = new Map<string, number>();
  for (const id of withSide) again.set(id, (again.get(id) ?? 0) + 1);
  return withSide.map((id, i) => (again.get(id)! > 1 ? `${id} (row ${lines[i]!.row.number})` : id));
}
