import type { Claim } from "../claim.js";
import type { Span } from "../text/token.js";
import { isTotal } from "./cell-values.js";
import type { CountTable } from "./table-counts.js";

/** One total with its parts. */
interface Sum {
  readonly at: Span;
  readonly total: number;
  readonly parts: readonly number[];
}

const mayOverlap =
  /complication|infection|failure|reason|event|symptom|nerve|palsy|stiff|pain|pin|wire|loss|lesion|injur|diagnos|more than one|any\b/i;
/** Lines of one family share out their whole: each case is in one of them. */
const families = [
  /^(grades? )?(i{1,3}|iv|v|[1-5])( (fractures?|displacement))?$/i,
  /^(boys?|girls?)$/i,
  /^(male|female)s?$/i,
  /^(left|right)$/i,
  /^(closed|open)( reduction)?( ?\(n ?= ?\d+\))?$/i,
  /^(success|failure)$/i,
  /^(excellent|good|fair|satisfactory|moderate|poor|bad)$/i,
];

/**
 * Counts against the "Total" row (last) and "Total" column (last). A sum fails only where the table itself shows that
 * its parts share out the whole: its lines are classes such as grades, or the other sums of the same kind are right.
 */
export function judgeTableSums(table: CountTable): Claim[] {
  return [...judged(columnSums(table), table.labels.slice(0, -1)), ...judged(rowSums(table), table.heads.slice(0, -1))];
}

function judged(sums: readonly Sum[], lines: readonly Span[]): Claim[] {
  const right = sums.filter(({ total, parts }) => added(parts) === total);
  const names = lines.map(({ text }) => text.toLowerCase());
  const family = families.some((one) => names.every((name) => one.test(name)));
  const trusted = family && new Set(names).size === names.length;
  const overlap = !family && names.some((name) => mayOverlap.test(name));
  return sums.flatMap((sum): Claim[] => {
    const base = claimBase(sum);
    const text = `${sum.parts.join(" + ")} = ${added(sum.parts)}`;
    if (right.includes(sum))
      return [{ ...base, arithmetic: "holds", because: `${text}.`, reproducedBy: ["sum of the parts"] }];
    const clear = !overlap && (trusted || (right.length >= 2 && right.length > sums.length - right.length));
    if (!clear) return [];
    return [{ ...base, arithmetic: "fails", because: `${text}, not ${sum.total}. Which number is right?` }];
  });
}

/** Columns of shares, averages and the like have no sum. */
const noSum =
  /^%|\s%$|^per ?cent|\bpercent|^(?!n\b|no\b|number).*\(%\)$|\b(mean|median|rate|sd|iqr|range|ratio|p|age)\b/i;

/** Each column of counts, and of wholes in "n/N" cells, above a last row named Total. */
function columnSums({ labels, cells, counts, heads }: CountTable): Sum[] {
  const last = counts.length - 1;
  if (last < 2 || !isTotal(labels[last]!.text) || labels.slice(0, last).some(({ text }) => isTotal(text))) return [];
  return heads.flatMap((head, j) => {
    const column = counts.map((row) => row[j]!);
    if (noSum.test(head.text) || column.some((cell) => cell === null)) return [];
    const full = column.map((cell) => cell!);
    const at = cells[last]![j]!;
    const sums = [{ at, total: full[last]!.count, parts: full.slice(0, last).map(({ count }) => count) }];
    if (full.every(({ trials }) => trials !== null))
      sums.push({ at, total: full[last]!.trials!, parts: full.slice(0, last).map(({ trials }) => trials!) });
    return sums;
  });
}

/** Each row of plain counts before a last column named Total. */
function rowSums({ heads, cells, counts }: CountTable): Sum[] {
  const last = heads.length - 1;
  if (last < 2 || !isTotal(heads[last]!.text) || heads.slice(0, last).some(({ text }) => isTotal(text))) return [];
  return counts.flatMap((row, i) => {
    if (row.some((cell) => cell === null || cell.trials !== null)) return [];
    const full = row.map((cell) => cell!.count);
    return [{ at: cells[i]![last]!, total: full[last]!, parts: full.slice(0, last) }];
  });
}

const added = (parts: readonly number[]): number => parts.reduce((a, b) => a + b, 0);

const claimBase = ({ at, total, parts }: Sum): Omit<Claim, "arithmetic" | "because"> => ({
  ...at,
  kind: "total",
  printed: { total: { value: total, decimals: 0 } },
  recomputed: { sum: added(parts) },
  unit: "cannot be checked",
  conclusion: "cannot be checked",
  reproducedBy: [],
  wouldChange: [],
});
