import { showValue } from "./show-value.js";
import type { CaseRow, CaseTable } from "./types.js";

/** One cell that differs between two versions of a sheet. */
export interface ChangedCell {
  readonly id: string;
  /** Row in the new version. */
  readonly row: number;
  readonly column: string;
  readonly before: string;
  readonly after: string;
}

/** What the new version of a sheet brings, in cases, columns and cells. */
export interface VersionChanges {
  readonly added: readonly { readonly id: string; readonly row: number }[];
  readonly removed: readonly { readonly id: string; readonly row: number }[];
  readonly changed: readonly ChangedCell[];
  /** Columns with another heading but the same role and values. */
  readonly renamed: readonly { readonly before: string; readonly after: string }[];
  readonly addedColumns: readonly string[];
  readonly removedColumns: readonly string[];
  /** Earlier answers that no longer fit their question, which is asked again. */
  readonly unfit?: readonly { readonly question: string; readonly answer: string }[];
}

/**
 * Compares two versions of a sheet: cases matched by child, side and date, columns by name, else by role and values. The
 * order of rows and columns does not count. Identifier columns are left out.
 */
export function compareVersions(before: CaseTable, after: CaseTable): VersionChanges {
  const pairs = matchCases(before, after);
  const columns = matchColumns(before, after, pairs);
  const changed: ChangedCell[] = [];
  for (const [old, now] of pairs)
    for (const [from, to] of columns) {
      const [was, is] = [showValue(old.values[from]!), showValue(now.values[to]!)];
      if (was !== is)
        changed.push({ id: now.id, row: now.row, column: after.columns[to]!.name, before: was, after: is });
    }
  const [matched, found] = [new Set(pairs.map(([old]) => old)), new Set(pairs.map(([, now]) => now))];
  const [from, to] = [new Set(columns.map(([k]) => k)), new Set(columns.map(([, k]) => k))];
  const shown = ({ id, row }: CaseRow): { id: string; row: number } => ({ id, row });
  return {
    added: after.cases.filter((one) => !found.has(one)).map(shown),
    removed: before.cases.filter((one) => !matched.has(one)).map(shown),
    changed,
    renamed: columns
      .map(([k, m]) => ({ before: before.columns[k]!.name, after: after.columns[m]!.name }))
      .filter((names) => names.before !== names.after),
    addedColumns: after.columns.filter(({ role }, k) => role !== "identifier" && !to.has(k)).map(({ name }) => name),
    removedColumns: before.columns
      .filter(({ role }, k) => role !== "identifier" && !from.has(k))
      .map(({ name }) => name),
  };
}

type Pair = readonly [CaseRow, CaseRow];

/** Matches by child, side and first date; then, among the rest, by child and side, and by the name of the case. */
function matchCases(before: CaseTable, after: CaseTable): Pair[] {
  const pairs: Pair[] = [];
  let old = [...before.cases];
  let now = [...after.cases];
  const keys = [
    (table: CaseTable, one: CaseRow) =>
      `${one.child}\u0000${held(table, one, "side")}\u0000${held(table, one, "date")}`,
    (table: CaseTable, one: CaseRow) => `${one.child}\u0000${held(table, one, "side")}`,
    (_: CaseTable, one: CaseRow) => one.id,
  ];
  for (const key of keys) {
    const waiting = new Map<string, CaseRow[]>();
    for (const one of now) {
      const name = key(after, one).toLowerCase();
      waiting.set(name, [...(waiting.get(name) ?? []), one]);
    }
    const taken = new Set<CaseRow>();
    old = old.filter((one) => {
      const match = waiting.get(key(before, one).toLowerCase())?.shift();
      if (!match) return true;
      pairs.push([one, match]);
      taken.add(match);
      return false;
    });
    now = now.filter((one) => !taken.has(one));
  }
  return pairs;
}

function held(table: CaseTable, one: CaseRow, role: "side" | "date"): string {
  const k = table.columns.findIndex((column) => column.role === role);
  return k < 0 ? "" : showValue(one.values[k]!);
}

/** Columns by name; a column left over matches one of the same role whose values agree in most matched cases. */
function matchColumns(before: CaseTable, after: CaseTable, pairs: readonly Pair[]): (readonly [number, number])[] {
  const usable = (table: CaseTable): number[] =>
    table.columns.flatMap(({ role }, k) => (role === "identifier" ? [] : [k]));
  const matched = usable(before).flatMap((k): (readonly [number, number])[] => {
    const m = after.columns.findIndex(({ name, role }) => name === before.columns[k]!.name && role !== "identifier");
    return m < 0 ? [] : [[k, m]];
  });
  const left = usable(before).filter((k) => !matched.some(([from]) => from === k));
  for (const k of left) {
    const free = usable(after).filter(
      (m) => after.columns[m]!.role === before.columns[k]!.role && !matched.some(([, to]) => to === m),
    );
    const alike = free.find(
      (m) =>
        pairs.filter(([old, now]) => showValue(old.values[k]!) === showValue(now.values[m]!)).length > pairs.length / 2,
    );
    if (alike !== undefined) matched.push([k, alike]);
  }
  return matched;
}
