import type { PrintedNumber } from "../text/token.js";

/** What a cell counts: "31", "31/37" or "31 (84%)"; whether the bracket is a percentage is for the table to say. */
export interface CellCount {
  readonly count: number;
  readonly trials: number | null;
  readonly bracket: PrintedNumber | null;
  readonly percentMark: boolean;
}

/** The count of a cell that holds nothing else, or null. */
export function cellCount(text: string): CellCount | null {
  if (text.length > 40) return null;
  const found = /^(\d{1,7})(?: ?\/ ?(\d{1,7}))?(?: ?[([] ?(\d{1,3}(?:[.·]\d{1,3})?) ?(%?) ?[)\]])?$/.exec(text);
  if (!found) return null;
  const [, count, trials, bracket, mark] = found;
  return {
    count: Number(count),
    trials: trials === undefined ? null : Number(trials),
    bracket:
      bracket === undefined
        ? null
        : { value: Number(bracket.replace("·", ".")), decimals: bracket.split(/[.·]/)[1]?.length ?? 0 },
    percentMark: mark === "%",
  };
}

/** The whole that a head or a label names, "Closed (n = 40)"; null when none or several are named. */
export function namedWhole(text: string): number | null {
  const found = [...text.slice(0, 200).matchAll(/\bn ?= ?(\d{1,7})\b(?![.,·/]\d)/gi)];
  return found.length === 1 ? Number(found[0]![1]) : null;
}

/** "Total", "All", "Overall", with or without a unit or "n = 40". */
export const isTotal = (text: string): boolean =>
  /^(total|sum|overall|all)( (fractures|cases|children|patients|limbs|grades))?( ?[,(] ?(n|no\.?)( ?= ?\d+)? ?\)?)?$/i.test(
    text,
  );
