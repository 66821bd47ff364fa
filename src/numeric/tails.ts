/** Both tails of a distribution at one point, each to full relative precision: never one minus the other when small. */
export interface Tails {
  /** P(X <= x) */
  readonly lower: number;
  /** P(X > x) */
  readonly upper: number;
}

/** Nothing of the distribution lies at or below the point. */
export const allAbove: Tails = { lower: 0, upper: 1 };

/** The whole distribution lies at or below the point. */
export const allBelow: Tails = { lower: 1, upper: 0 };
