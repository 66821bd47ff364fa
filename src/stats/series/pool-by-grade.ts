import { requireCount } from "../guards.js";
import type { Count, NotEstimable } from "../types.js";
import { poolLogisticNormal, type PooledProportion } from "./pool-logistic-normal.js";

/** What one series reported of one grade. */
export interface SeriesGrade extends Count {
  readonly series: string;
  readonly grade: string;
}

export interface PooledByGrade {
  readonly method: "logistic-normal within each grade";
  /** In the order in which the grades first occur. */
  readonly grades: readonly {
    readonly grade: string;
    readonly series: readonly string[];
    readonly successes: number;
    readonly trials: number;
    readonly pooled: PooledProportion | NotEstimable;
  }[];
}

/**
 * Pooled proportion within each grade, so that series of different mixes are not mixed.
 *
 * @param rows one a series and grade
 * @param options.level coverage in (0, 1); default 0.95
 * @throws RangeError when a count or the level is out of range, or a series gives a grade twice
 * @see Stijnen, Hamza and Oezdemir 2010, Stat Med 29:3046-3067
 * @example poolByGrade([{ series: "A", grade: "I", successes: 3, trials: 4 }]).grades[0].trials // => 4
 */
export function poolByGrade(rows: readonly SeriesGrade[], options: { readonly level?: number } = {}): PooledByGrade {
  const byGrade = new Map<string, SeriesGrade[]>();
  rows.forEach((row, at) => {
    requireCount("poolByGrade", row.successes, row.trials, `rows[${at}]`);
    const others = byGrade.get(row.grade) ?? [];
    if (others.some(({ series }) => series === row.series))
      throw new RangeError(`poolByGrade: a series must give each grade once, got ${row.series} ${row.grade} twice`);
    byGrade.set(row.grade, [...others, row]);
  });
  const sum = (of: readonly SeriesGrade[], key: "successes" | "trials"): number =>
    of.reduce((total, row) => total + row[key], 0);
  return {
    method: "logistic-normal within each grade",
    grades: [...byGrade].map(([grade, of]) => ({
      grade,
      series: of.map(({ series }) => series),
      successes: sum(of, "successes"),
      trials: sum(of, "trials"),
      pooled: poolLogisticNormal(of, options),
    })),
  };
}
