import { tippingGrid } from "../stats/time/tipping-grid.js";
import type { Interval, NotEstimable } from "../stats/types.js";

/** One technique: its successes among the followed, and how many more were lost. */
export interface TippingGroup {
  readonly name: string;
  readonly successes: number;
  readonly trials: number;
  readonly lost: number;
}

export interface TippingCell {
  /** First less second, a fraction. */
  readonly difference: number;
  readonly interval: Interval;
}

/** A comparison of two techniques with the lost cases counted in every possible way. */
export interface Tipping {
  readonly first: TippingGroup;
  readonly second: TippingGroup;
  readonly level: number;
  /** Rows: failures among the lost of the first technique, 0 to all; within a row those of the second. */
  readonly cells: readonly (readonly TippingCell[])[];
}

/** More are not drawn: nobody reads so many marks. */
const mostCells = 400;

/** Where does the comparison tip? */
export function tipping(first: TippingGroup, second: TippingGroup, level: number): Tipping | NotEstimable {
  if (first.trials === 0 || second.trials === 0) return none("not both techniques were used");
  if (first.lost + second.lost === 0) return none("nobody of either technique is missing");
  if ((first.lost + 1) * (second.lost + 1) > mostCells)
    return none(
      `too many are missing to try every outcome (${first.lost} ${first.name}, ${second.lost} ${second.name})`,
    );
  const { cells } = tippingGrid({ first: counted(first), second: counted(second) }, { level });
  return {
    first,
    second,
    level,
    cells: cells.map((row) =>
      row.map(({ difference }) => ({ difference: difference.estimate, interval: difference.interval })),
    ),
  };
}

const none = (because: string): NotEstimable => ({ estimate: null, because });

function counted({ successes, trials, lost }: TippingGroup) {
  return { successes, trials, lost };
}
