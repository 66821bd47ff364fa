import type { Claim } from "../claim.js";
import { asPrinted, fixed } from "../judging/number-text.js";
import { roundingOf } from "../judging/rounding.js";
import type { PrintedNumber } from "../text/token.js";
import type { CountTable } from "./table-counts.js";

const noShare = /\b(mean|median|sd|se|iqr|range|quartiles?|age|years?|months?|weeks?|days?|score|mm|cm|degrees?)\b|°/i;
const losing = /missing|unknown|not recorded|not known|available|of those|of these|of whom|responded|lost/i;

/**
 * Sets each "n (%)" cell against the whole of its column's head, "Closed (n = 40)". A percentage that another whole of
 * the table explains (a row's sum, a count above it) stays open.
 */
export function judgePercentCells(table: CountTable): Claim[] {
  const open = [...table.labels, ...table.heads].some(({ text }) => losing.test(text));
  return table.counts.flatMap((row, i) =>
    row.flatMap((cell, j): Claim[] => {
      const whole = cell?.trials ?? namedWholeOf(table, i, j);
      if (!cell?.bracket || whole === null || whole === 0 || !isShare(table, i, j)) return [];
      const { count, bracket } = cell;
      const value = (100 * count) / whole;
      const base = claimBase(table, i, j, bracket, count, whole, value);
      const rounding = count <= whole ? roundingOf([[value, bracket]]) : null;
      if (rounding) {
        const because = `${count} of ${whole} is ${asPrinted(bracket)}%${rounding === "rounded" ? "" : `, ${rounding}`}.`;
        return [{ ...base, arithmetic: "holds", because, reproducedBy: ["count over the column's total"] }];
      }
      const other = otherWholes(table, i, j).find((trials) => trials >= count && fits(count, trials, bracket));
      if (other !== undefined || (open && count <= whole)) {
        const because = `${asPrinted(bracket)}% is not ${count} of the column's ${whole} (${fixed(value, bracket.decimals)}%)${other === undefined ? "" : `, but it is ${count} of ${other}`}. Please name the denominator.`;
        return [{ ...base, arithmetic: "cannot be checked", because }];
      }
      const because = `${count} of the ${whole} in the column's head is ${fixed(value, bracket.decimals)}%, not ${asPrinted(bracket)}%. Which number is right?`;
      return [{ ...base, arithmetic: "fails", because }];
    }),
  );
}

/** A whole in the label wins over the head's; both at once name none. */
const namedWholeOf = (table: CountTable, i: number, j: number): number | null =>
  /\bn ?=/i.test(table.labels[i]!.text) ? null : table.wholes[j]!;

/** The table says that brackets hold percentages: by a mark in the cell, its label or its head. */
function isShare(table: CountTable, i: number, j: number): boolean {
  const [label, head] = [table.labels[i]!.text, table.heads[j]!.text];
  if (table.counts[i]![j]!.percentMark) return true;
  if (mostlyShares(table)) return true;
  return !noShare.test(label) && !noShare.test(head) && [label, head, table.corner].some((text) => text.includes("%"));
}

/** Without a percent sign: all bracketed cells but one go by their column's head. */
function mostlyShares(table: CountTable): boolean {
  const fitting = table.counts.flatMap((row, i) =>
    row.flatMap((cell, j): boolean[] => {
      const whole = namedWholeOf(table, i, j);
      return cell?.bracket && cell.trials === null && whole !== null && cell.bracket.decimals > 0
        ? [fits(cell.count, whole, cell.bracket)]
        : [];
    }),
  );
  const right = fitting.filter(Boolean).length;
  return right >= 4 && fitting.length - right <= 1;
}

const fits = (count: number, trials: number, printed: PrintedNumber): boolean =>
  trials > 0 && roundingOf([[(100 * count) / trials, printed]]) !== null;

/** Counts of the column, the row's sum, and the other wholes: percentages of a subgroup or of a row are no slip. */
function otherWholes(table: CountTable, i: number, j: number): number[] {
  const column = table.counts.slice(0, i).flatMap((row) => row[j]?.count ?? []);
  const row = table.counts[i]!.flatMap((cell) => cell?.count ?? []);
  const sums = [row.reduce((a, b) => a + b, 0), ...row.filter((_, at) => at !== j)];
  const all = table.wholes.flatMap((whole) => whole ?? []);
  return [...column, ...sums, ...all, all.reduce((a, b) => a + b, 0)];
}

function claimBase(
  table: CountTable, i: number, j: number, percent: PrintedNumber, successes: number, trials: number, value: number,
): Omit<Claim, "arithmetic" | "because"> {
  return {
    ...table.cells[i]![j]!,
    kind: "percentage",
    printed: {
      successes: { value: successes, decimals: 0 }, trials: { value: trials, decimals: 0 }, percent,
    },
    recomputed: { percent: value },
    unit: "cannot be checked",
    conclusion: "cannot be checked",
    reproducedBy: [],
    wouldChange: [],
  };
} // prettier-ignore
