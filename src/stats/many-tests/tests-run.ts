import { requireOptions } from "../guards.js";

/** p values adjusted for their number, in the order given. */
export interface AdjustedTests<Method extends string> {
  readonly method: Method;
  /** How many tests were run, reported here or not. */
  readonly tests: number;
  readonly p: readonly number[];
  readonly adjusted: readonly number[];
}

export interface TestsRunOption {
  /** Tests run in all, when more than are given here; default as many as are given. */
  readonly tests?: number;
}

/** Checks p values and options, and gives the number of tests run. */
export function testsRun(caller: string, p: readonly number[], options: TestsRunOption): number {
  requireOptions(caller, options, ["tests"]);
  if (p.length === 0) throw new RangeError(`${caller}: p must hold at least one p value, got 0`);
  p.forEach((value, i) => {
    if (!(value >= 0 && value <= 1)) throw new RangeError(`${caller}: p[${i}] must lie in [0, 1], got ${value}`);
  });
  const { tests = p.length } = options;
  if (!(Number.isSafeInteger(tests) && tests >= p.length))
    throw new RangeError(`${caller}: tests must be an integer of at least ${p.length}, got ${tests}`);
  return tests;
}

/** Walks over the p values from the smallest to the largest and puts what `step` returns back in the order given. */
export function rising(p: readonly number[], step: (value: number, rank: number) => number): number[] {
  const order = p.map((_, i) => i).toSorted((i, j) => p[i]! - p[j]!);
  const adjusted = new Array<number>(p.length);
  order.forEach((i, rank) => (adjusted[i] = step(p[i]!, rank)));
  return adjusted;
}

/** The same from the largest to the smallest, ranks still counted from the smallest. */
export function falling(p: readonly number[], step: (value: number, rank: number) => number): number[] {
  const order = p.map((_, i) => i).toSorted((i, j) => p[j]! - p[i]!);
  const adjusted = new Array<number>(p.length);
  order.forEach((i, place) => (adjusted[i] = step(p[i]!, p.length - 1 - place)));
  return adjusted;
}
