import { requireLevel, requireOptions } from "../guards.js";
import { standardisedProportion } from "../strata/standardised-proportion.js";
import type { Interval } from "../types.js";
import { wilson } from "../wilson.js";

/** Counts of one grade as published; null where the paper does not state them. */
export interface PublishedGrade {
  readonly grade: string;
  readonly successes: number | null;
  readonly cases: number | null;
}

/** One published series of consecutive cases. */
export interface PublishedSeries {
  readonly name: string;
  readonly grades: readonly PublishedGrade[];
}

/** Weight of each grade in the mix that all series are brought to; cases or shares. */
export type GradeMix = readonly { readonly grade: string; readonly weight: number }[];

/** A rate with its Wilson interval, or the reason why there is none. */
export type SeriesRate =
  | { readonly successes: number; readonly cases: number; readonly estimate: number; readonly interval: Interval }
  | {
      readonly successes: number | null;
      readonly cases: number | null;
      readonly estimate: null;
      readonly interval: null;
      readonly because: string;
    };

export type StandardisedRate =
  | { readonly method: string; readonly estimate: number; readonly interval: Interval }
  | { readonly method: string; readonly estimate: null; readonly interval: null; readonly because: string };

export interface SeriesRates {
  readonly name: string;
  readonly crude: SeriesRate;
  readonly grades: readonly ({ readonly grade: string } & SeriesRate)[];
  readonly standardised: StandardisedRate;
}

export interface SeriesRatesResult {
  readonly method: "crude and directly standardised rates of published series";
  readonly level: number;
  /** Whose mix: given, or that of all series together (grades whose cases are stated). */
  readonly mixOf: "given" | "all series together";
  readonly mix: readonly { readonly grade: string; readonly weight: number; readonly share: number }[];
  readonly series: readonly SeriesRates[];
}

/**
 * Success of several published series: by grade, crude, and brought to one common mix of grades.
 *
 * @param series each with its grades; a grade stands in a series once at most; counts that are not stated are null
 * @param options.mix weights of the grades, default the cases of all series together; a grade it leaves out weighs 0
 * @param options.level coverage in (0, 1); default 0.95
 * @throws RangeError when a count or weight is out of range, a grade is repeated, or the mix holds a grade of no series
 * @see `wilson` and `standardisedProportion` for the methods
 * @example seriesRates([{ name: "A", grades: [{ grade: "I", successes: 9, cases: 10 }] }]).series[0].crude.estimate // => 0.9
 */
export function seriesRates(
  series: readonly PublishedSeries[],
  options: { readonly mix?: GradeMix; readonly level?: number } = {},
): SeriesRatesResult {
  requireOptions("seriesRates", options, ["mix", "level"]);
  const { level = 0.95 } = options;
  requireLevel("seriesRates", level);
  series.forEach(requireSeries);
  const grades = [...new Set(series.flatMap((one) => one.grades.map(({ grade }) => grade)))];
  const mix = options.mix ?? casesOfAll(series, grades);
  requireMix(mix, grades);

  const total = mix.reduce((sum, { weight }) => sum + weight, 0);
  return {
    method: "crude and directly standardised rates of published series",
    level,
    mixOf: options.mix === undefined ? "all series together" : "given",
    mix: mix.map(({ grade, weight }) => ({ grade, weight, share: total === 0 ? 0 : weight / total })),
    series: series.map((one) => ({
      name: one.name,
      crude: crudeRate(one.grades, level),
      grades: one.grades.map((counts) => ({ grade: counts.grade, ...rate(counts, level) })),
      standardised: standardised(one.grades, mix, level),
    })),
  };
}

function requireSeries({ name, grades }: PublishedSeries): void {
  const seen = new Set<string>();
  for (const { grade, successes, cases } of grades) {
    if (seen.has(grade))
      throw new RangeError(`seriesRates: series "${name}" must hold grade "${grade}" once, got it twice`);
    seen.add(grade);
    for (const [what, count] of [
      ["successes", successes],
      ["cases", cases],
    ] as const)
      if (count !== null && !(Number.isSafeInteger(count) && count >= 0))
        throw new RangeError(
          `seriesRates: ${what} of series "${name}", grade "${grade}" must be an integer of at least 0 or null, got ${count}`,
        );
    if (successes !== null && cases !== null && successes > cases)
      throw new RangeError(
        `seriesRates: successes of series "${name}", grade "${grade}" must be at most its cases (${cases}), got ${successes}`,
      );
  }
}

function casesOfAll(series: readonly PublishedSeries[], grades: readonly string[]): GradeMix {
  return grades.map((grade) => ({
    grade,
    weight: series
      .flatMap((one) => one.grades.filter((counts) => counts.grade === grade))
      .reduce((sum, { cases }) => sum + (cases ?? 0), 0),
  }));
}

function requireMix(mix: GradeMix, grades: readonly string[]): void {
  const seen = new Set<string>();
  for (const { grade, weight } of mix) {
    if (!(Number.isFinite(weight) && weight >= 0))
      throw new RangeError(`seriesRates: the weight of grade "${grade}" must be a number of at least 0, got ${weight}`);
    if (seen.has(grade)) throw new RangeError(`seriesRates: the mix must hold grade "${grade}" once, got it twice`);
    if (!grades.includes(grade))
      throw new RangeError(
        `seriesRates: the mix must hold grades of the series (${grades.join(", ")}), got "${grade}"`,
      );
    seen.add(grade);
  }
}

function rate({ successes, cases }: Pick<PublishedGrade, "successes" | "cases">, level: number): SeriesRate {
  const none = (because: string): SeriesRate => ({ successes, cases, estimate: null, interval: null, because });
  if (successes === null) return none(cases === null ? "counts are not stated" : "successes are not stated");
  if (cases === null) return none("cases are not stated");
  if (cases === 0) return none("there are no cases");
  const { estimate, interval } = wilson(successes, cases, { level });
  return { successes, cases, estimate, interval };
}

function crudeRate(grades: readonly PublishedGrade[], level: number): SeriesRate {
  const sum = (counts: readonly (number | null)[]): number | null =>
    counts.reduce<number | null>((all, count) => (all === null || count === null ? null : all + count), 0);
  const successes = sum(grades.map((counts) => counts.successes));
  const cases = sum(grades.map((counts) => counts.cases));
  return rate({ successes, cases }, level);
}

function standardised(grades: readonly PublishedGrade[], mix: GradeMix, level: number): StandardisedRate {
  const method = "direct standardisation, Wilson limits combined by variance recovery";
  const none = (because: string): StandardisedRate => ({ method, estimate: null, interval: null, because });
  const held = mix.filter(({ weight }) => weight > 0);
  if (held.length === 0) return none("the mix holds no cases");
  const counts = held.map(({ grade }) => grades.find((candidate) => candidate.grade === grade));
  const named = (wanted: (counts: PublishedGrade | undefined) => boolean): string =>
    held
      .filter((_, i) => wanted(counts[i]))
      .map(({ grade }) => grade)
      .join(", ");
  const without = named((one) => one === undefined || one.cases === 0);
  if (without) return none(`the series has no cases of grade ${without}, which the mix holds`);
  const unstated = named((one) => one?.cases === null || one?.successes === null);
  if (unstated) return none(`the counts of grade ${unstated}, which the mix holds, are not stated`);

  const result = standardisedProportion(
    counts.map((one) => ({ successes: one!.successes!, trials: one!.cases! })),
    held.map(({ weight }) => weight),
    { level },
  );
  return result.estimate === null
    ? none(result.because)
    : { method, estimate: result.estimate, interval: result.interval };
}
