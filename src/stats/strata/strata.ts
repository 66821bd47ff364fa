import type { Count, Interval } from "../types.js";

/** One stratum (a grade, a hospital): successes of trials in two groups; a group may be empty here (0 of 0). */
export interface Stratum {
  readonly first: Count;
  readonly second: Count;
}

/** Limits that the data leave undefined, with the reason to print. */
export interface NoInterval {
  readonly low: null;
  readonly high: null;
  readonly because: string;
}

/** Limits of an estimate, or the reason why there are none. */
export type Limits = Interval | NoInterval;

/** The four cells and margins of a stratum, named as in the formulas of the literature. */
export interface StratumCells {
  /** Successes and failures of the first group. */
  readonly a: number;
  readonly b: number;
  /** Successes and failures of the second group. */
  readonly c: number;
  readonly d: number;
  /** Cases of the first and of the second group. */
  readonly n1: number;
  readonly n2: number;
  /** Successes and failures of both groups together. */
  readonly m1: number;
  readonly m0: number;
  readonly total: number;
}

/** Throws unless there is at least one stratum and every group is a count (0 of 0 allowed). */
export function requireStrata(caller: string, strata: readonly Stratum[]): void {
  if (strata.length === 0) throw new RangeError(`${caller}: there must be at least one stratum, got none`);
  strata.forEach((stratum, i) => {
    requirePartCount(caller, stratum.first, `strata[${i}].first`);
    requirePartCount(caller, stratum.second, `strata[${i}].second`);
  });
}

/** Throws unless `0 <= successes <= trials`, both integers; unlike a count that stands alone it may be 0 of 0. */
export function requirePartCount(caller: string, { successes, trials }: Count, name: string): void {
  if (!(Number.isSafeInteger(trials) && trials >= 0))
    throw new RangeError(`${caller}: ${name}.trials must be an integer of at least 0, got ${trials}`);
  if (!(Number.isSafeInteger(successes) && successes >= 0 && successes <= trials))
    throw new RangeError(
      `${caller}: ${name}.successes must be an integer from 0 to ${name}.trials (${trials}), got ${successes}`,
    );
}

/** The cells of one stratum. */
export function stratumCells({ first, second }: Stratum): StratumCells {
  const a = first.successes;
  const b = first.trials - a;
  const c = second.successes;
  const d = second.trials - c;
  return { a, b, c, d, n1: a + b, n2: c + d, m1: a + c, m0: b + d, total: a + b + c + d };
}

/** The strata that can say anything about an odds ratio: both groups present, both outcomes seen. */
export function informativeStrata(strata: readonly Stratum[]): StratumCells[] {
  return strata.map(stratumCells).filter(({ n1, n2, m1, m0 }) => n1 > 0 && n2 > 0 && m1 > 0 && m0 > 0);
}
