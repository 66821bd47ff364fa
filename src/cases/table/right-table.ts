import { headingRole } from "./heading-words.js";

/** A table to the right of the cases: it starts at a column, after an empty one. */
export interface RightTable {
  /** Zero-based first column. */
  readonly from: number;
  /** Lines, by index, in which it holds anything. */
  readonly lines: readonly number[];
}

/**
 * Finds a table of its own to the right of an empty column. An empty column also parts groups of one table: what is
 * filled in about as many lines as the cases, and has no case numbers of its own, belongs to the cases.
 */
export function rightTable(
  names: readonly string[],
  lines: readonly (readonly string[])[],
  above: readonly (readonly string[])[],
): RightTable | undefined {
  const width = [...lines, ...above].reduce((widest, line) => Math.max(widest, line.length), names.length);
  const used = usedColumns(names, lines, width);
  for (let gap = 1; gap < width - 1; gap++) {
    if (used[gap] || !used[gap - 1]) continue;
    const from = used.indexOf(true, gap);
    if (from < 0) return undefined;
    const left = names.slice(0, gap).filter((name) => name !== "");
    if (left.length < 2) continue;
    const held = lines.flatMap((line, i) => (someText(line, from, width) ? [i] : []));
    if (isOwnTable(names, lines, { gap, from, held })) return { from, lines: held };
  }
  return undefined;
}

/** Columns with a name or any text. */
function usedColumns(names: readonly string[], lines: readonly (readonly string[])[], width: number): boolean[] {
  const used = Array.from({ length: width }, (_, c) => (names[c] ?? "") !== "");
  for (const line of lines) for (let c = 0; c < line.length; c++) if (line[c] !== "") used[c] = true;
  return used;
}

function someText(line: readonly string[], from: number, to: number): boolean {
  for (let c = from; c < to && c < line.length; c++) if (line[c] !== "") return true;
  return false;
}

function isOwnTable(
  names: readonly string[],
  lines: readonly (readonly string[])[],
  { gap, from, held }: { readonly gap: number; readonly from: number; readonly held: readonly number[] },
): boolean {
  const cases = lines.filter((line) => line.slice(0, gap).filter((text) => text !== "").length > 1).length;
  if (held.length === 0 || cases === 0) return false;
  const right = names.slice(from).filter((name) => name !== "");
  const left = new Set(names.slice(0, gap).map(ownName));
  const repeats = right.map(ownName).filter((name) => left.has(name));
  if (repeats.some((name) => ["id", "child", "identifier"].includes(headingRole(name) ?? ""))) return true;
  const together = held.at(-1)! - held[0]! + 1 === held.length;
  const few = held.length <= Math.max(2, cases * 0.6);
  if (right.length === 0) return few && (together || held.length < cases * 0.3);
  return few && together && held.length > 1 && isDense(lines, held, from, from + right.length);
}

/** A name without its group and without the number that tells it from an equal one. */
function ownName(name: string): string {
  return name
    .replace(/ \(\d+\)$/, "")
    .split(": ")
    .at(-1)!
    .toLowerCase();
}

/** A table has most of its cells filled in its lines; a column of remarks has not. */
function isDense(lines: readonly (readonly string[])[], held: readonly number[], from: number, to: number): boolean {
  if (to - from < 2) return false;
  const filled = held.reduce((sum, i) => sum + lines[i]!.slice(from, to).filter((text) => text !== "").length, 0);
  return filled >= held.length * (to - from) * 0.7;
}
