import { leaveOneOut, type LeaveOneOut } from "../../stats/series/leave-one-out.js";
import { poolByGrade, type PooledByGrade } from "../../stats/series/pool-by-grade.js";
import { poolLogisticNormal, type PooledProportion } from "../../stats/series/pool-logistic-normal.js";
import {
  seriesRates,
  type GradeMix,
  type PublishedGrade,
  type SeriesRates,
  type SeriesRatesResult,
} from "../../stats/series/series-rates.js";
import { nextCases } from "../../stats/one-proportion/next-cases.js";
import type { Interval, NotEstimable } from "../../stats/types.js";
import { wilson } from "../../stats/wilson.js";
import type { CardRow, PaperCard } from "./paper-card.js";
import { reasonsNotToPool, type PoolReason } from "./reasons-not-to-pool.js";

/** A count with the two bands that a picture draws. */
export interface BandedRate {
  readonly successes: number;
  readonly cases: number;
  readonly estimate: number;
  readonly interval: Interval;
  readonly inner: Interval;
}

export interface CardFindings {
  readonly card: PaperCard;
  readonly own: boolean;
  readonly crude: BandedRate | NotEstimable;
  readonly grades: readonly { readonly grade: string; readonly rate: BandedRate | NotEstimable }[];
  readonly standardised:
    { readonly estimate: number; readonly interval: Interval; readonly inner: Interval } | NotEstimable;
  /** Had all the lost failed, and had all succeeded. */
  readonly lost: { readonly worst: BandedRate; readonly best: BandedRate } | NotEstimable;
  /** Successes among the next cases if they are like those seen. */
  readonly next: { readonly cases: number; readonly estimate: number; readonly interval: Interval } | NotEstimable;
}

export interface PoolFindings {
  readonly overall: PooledProportion | NotEstimable;
  readonly byGrade: PooledByGrade;
  readonly without: readonly { readonly name: string; readonly pooled: LeaveOneOut["all"] }[];
}

export interface SeriesFindings {
  readonly level: number;
  readonly mix: SeriesRatesResult["mix"];
  readonly mixOf: string;
  readonly grades: readonly string[];
  readonly series: readonly CardFindings[];
  readonly reasonsNotToPool: readonly PoolReason[];
  /** null unless asked for. */
  readonly pooled: PoolFindings | null;
}

/** Weights of the grades, and whose they are. */
export interface GivenMix {
  readonly of: string;
  readonly weights: GradeMix;
}

export interface SeriesOptions {
  readonly level?: number;
  /** Default: the cases of all series together. */
  readonly mix?: GivenMix;
  readonly pool?: boolean;
  /** Name of the card that is our own series. */
  readonly own?: string;
  /** How many further cases are looked at. */
  readonly next?: number;
}

/** Several published series beside each other: by grade, crude, with one grade mix; lost cases, next cases; together when asked. */
export function seriesFindings(cards: readonly PaperCard[], options: SeriesOptions = {}): SeriesFindings {
  const { level = 0.95, mix, pool = false, own, next = 20 } = options;
  const published = cards.map(({ name, rows }) => ({ name, grades: byGrade(rows) }));
  const used = mix === undefined ? {} : { mix: mix.weights };
  const outer = seriesRates(published, { level, ...used });
  const inner = seriesRates(published, { level: 0.5, ...used });
  return {
    level,
    mix: outer.mix,
    mixOf: mix?.of ?? "all series together",
    grades: outer.mix.map(({ grade }) => grade),
    series: cards.map((card, i) =>
      cardFindings(card, outer.series[i]!, inner.series[i]!, { own: card.name === own, next, level }),
    ),
    reasonsNotToPool: reasonsNotToPool(cards, outer),
    pooled: pool ? pooled(outer, level) : null,
  };
}

/** Counts of each grade over its techniques; not stated when one of them is not. */
function byGrade(rows: readonly CardRow[]): PublishedGrade[] {
  const add = (grade: string, what: "successes" | "cases"): number | null =>
    rows
      .filter((row) => row.grade === grade)
      .reduce<number | null>((sum, row) => (sum === null || row[what] === null ? null : sum + row[what]), 0);
  return [...new Set(rows.map(({ grade }) => grade))].map((grade) => ({
    grade,
    successes: add(grade, "successes"),
    cases: add(grade, "cases"),
  }));
}

function cardFindings(
  card: PaperCard,
  outer: SeriesRates,
  inner: SeriesRates,
  { own, next, level }: { readonly own: boolean; readonly next: number; readonly level: number },
): CardFindings {
  const { crude, standardised } = outer;
  return {
    card,
    own,
    crude: crude.estimate === null ? reason(crude) : banded(crude.successes, crude.cases, level),
    grades: outer.grades.map((rate) => ({
      grade: rate.grade,
      rate: rate.estimate === null ? reason(rate) : banded(rate.successes, rate.cases, level),
    })),
    standardised:
      standardised.estimate === null
        ? reason(standardised)
        : {
            estimate: standardised.estimate,
            interval: standardised.interval,
            inner: inner.standardised.interval ?? standardised.interval,
          },
    lost: lost(card, crude, level),
    next: crude.estimate === null ? reason(crude) : nextOf(crude.successes, crude.cases, next, level),
  };
}

function banded(successes: number, cases: number, level: number): BandedRate {
  const { estimate, interval } = wilson(successes, cases, { level });
  return { successes, cases, estimate, interval, inner: wilson(successes, cases, { level: 0.5 }).interval };
}

function reason({ because }: { readonly because: string }): NotEstimable {
  return { estimate: null, because };
}

function lost(card: PaperCard, crude: SeriesRates["crude"], level: number): CardFindings["lost"] {
  if (card.lost === null) return { estimate: null, because: "the paper does not state how many were lost" };
  if (crude.estimate === null) return reason(crude);
  const all = crude.cases + card.lost;
  return { worst: banded(crude.successes, all, level), best: banded(crude.successes + card.lost, all, level) };
}

function nextOf(successes: number, cases: number, next: number, level: number): CardFindings["next"] {
  const { estimate, interval } = nextCases(successes, cases, { next, level });
  return { cases: next, estimate, interval };
}

function pooled({ series }: SeriesRatesResult, level: number): PoolFindings {
  const counts = series.flatMap(({ name, crude }) =>
    crude.estimate === null ? [] : [{ name, successes: crude.successes, trials: crude.cases }],
  );
  const rows = series.flatMap(({ name, grades }) =>
    grades.flatMap((rate) =>
      rate.estimate === null
        ? []
        : [{ series: name, grade: rate.grade, successes: rate.successes, trials: rate.cases }],
    ),
  );
  return {
    overall: poolLogisticNormal(counts, { level }),
    byGrade: poolByGrade(rows, { level }),
    without: leaveOneOut(counts, { level }).without.map(({ left, pooled: rest }) => ({
      name: counts[left]!.name,
      pooled: rest,
    })),
  };
}
