/** Both ends of an interval, in the unit of the estimate. An open end is -Infinity or Infinity. */
export interface Interval {
  readonly low: number;
  readonly high: number;
}

/** A statistic that the data leave undefined, with the reason to print. */
export interface NotEstimable {
  readonly estimate: null;
  readonly because: string;
}

/** Successes of trials in one group. */
export interface Count {
  readonly successes: number;
  readonly trials: number;
}
