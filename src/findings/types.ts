import type { CaseCount, Denominator } from "../ledger/types.js";
export type { CaseCount, DenominatorName } from "../ledger/types.js";
import type { SuccessKind, Technique } from "../plan/types.js";
import type { Tipping } from "./tipping.js";
import type { Regrading } from "./regrading/types.js";
import type { Count, Interval, NotEstimable } from "../stats/types.js";

/** A rate with everything that may be printed of it; ids lead from the number to its cases. */
export interface Rate {
  readonly count: CaseCount;
  readonly estimate: number | null;
  readonly because?: string;
  readonly level: number;
  /** Wilson at the level, Wilson at 50%, exact tails at the level; null without trials. */
  readonly wilson: Interval | null;
  readonly wilson50: Interval | null;
  readonly exact: Interval | null;
  /** Present while questions are open: whatever the answers, the rate lies between these two counts. */
  readonly bounds?: { readonly low: Count; readonly high: Count };
}

export interface GradeRate {
  readonly grade: string;
  readonly rate: Rate;
}

/** Two-sided p values of one 2x2 table under every usual convention, each named. */
export interface FisherPs {
  readonly pointProbability: number;
  readonly doubled: number;
  readonly midP: number;
}

/** Closed against open in one set of cases. */
export interface Contrast {
  readonly closed: Rate;
  readonly open: Rate;
  /** Newcombe intervals at the level and at 50%. */
  readonly difference:
    { readonly estimate: number; readonly newcombe: Interval; readonly newcombe50: Interval } | NotEstimable;
  readonly oddsRatio:
    { readonly sample: number | null; readonly conditional: number; readonly exact: Interval } | NotEstimable;
  readonly fisher: FisherPs | null;
}

export interface GradeContrast extends Contrast {
  readonly grade: string;
  /** False where one technique was never used, so that nothing can be compared. */
  readonly overlap: boolean;
}

export interface Comparison {
  /** What was compared, in the plan's words: first technique. */
  readonly by: "first technique";
  readonly crude: Contrast;
  readonly grades: readonly GradeContrast[];
  readonly withoutOverlap: readonly string[];
  readonly mantelHaenszel:
    | {
        readonly oddsRatio: number | null;
        readonly oddsRatioInterval: Interval | null;
        readonly difference: number | null;
        readonly differenceInterval: Interval | null;
        readonly differenceInterval50: Interval | null;
        readonly p: number | null;
        readonly because?: string;
      }
    | NotEstimable;
  readonly exactCommon: { readonly estimate: number; readonly interval: Interval; readonly p: number } | NotEstimable;
  /** Both techniques' rates standardised to the grade mix of all compared cases. */
  readonly standardised: { readonly closed: number; readonly open: number; readonly difference: number } | NotEstimable;
  /** Cases that took no part, with the reason. */
  readonly leftOut: readonly { readonly reason: string; readonly cases: readonly string[] }[];
}

/** How limbs of one grade went from the first technique to the final one. */
export interface LadderRow {
  readonly grade: string;
  readonly paths: readonly {
    readonly first: Technique;
    readonly final: Technique;
    readonly cases: readonly string[];
  }[];
}

export interface Subgroup {
  readonly name: string;
  readonly inside: Rate;
  readonly outside: Rate;
  readonly notKnown: readonly string[];
}

export interface FailureLine {
  readonly id: string;
  readonly grade: string | null;
  readonly firstTechnique: Technique | null;
  readonly finalTechnique: Technique | null;
  readonly operator: string | null;
  readonly ageYears: number | null;
  readonly followUpMonths: number | null;
  readonly reason: string | null;
}

export interface ComplicationRow {
  readonly name: string;
  readonly rate: Rate;
  /** One-sided exact upper limit at the level, for the zero rows. */
  readonly upperLimit: number;
}

export interface Loss {
  readonly lost: readonly string[];
  readonly notRecorded: readonly string[];
  readonly analysed: Rate;
  /** Had all who left unjudged failed, and had all succeeded. */
  readonly worst: Rate;
  readonly best: Rate;
  readonly lostByGrade: readonly {
    readonly grade: string;
    readonly lost: readonly string[];
    readonly kept: readonly string[];
  }[];
  /** Closed against open, by the technique tried first, with those missing counted in every possible way. */
  readonly tipping:
    | (Tipping & { readonly missing: { readonly closed: readonly string[]; readonly open: readonly string[] } })
    | NotEstimable;
  readonly followUp:
    { readonly cases: number; readonly median: number; readonly low: number; readonly high: number } | NotEstimable;
}

/** Losses of several limbs; negative where motion is better than on the other side. */
export interface LossSummary {
  readonly median: number;
  readonly q1: number;
  readonly q3: number;
  readonly low: number;
  readonly high: number;
}

/** Motion lost against the child's other side. */
export interface MotionLoss {
  /** What is measured ("elevation"), in the unit of the sheet. */
  readonly name: string;
  /** Cases with both sides measured, whose other side was not injured. */
  readonly pairs: readonly {
    readonly id: string;
    readonly grade: string | null;
    readonly injured: number;
    readonly other: number;
  }[];
  readonly loss: (LossSummary & { readonly interval: Interval }) | NotEstimable;
  readonly byGrade: readonly {
    readonly grade: string;
    readonly cases: readonly string[];
    readonly summary: LossSummary | null;
  }[];
  /** Both sides injured: no other side to compare with. */
  readonly bilateral: readonly string[];
  readonly notMeasured: readonly string[];
}

/** Closed against open adjusted for grade as a score, as far as the failures allow. */
export interface Adjusted {
  readonly method: string;
  readonly failures: number;
  readonly cases: readonly string[];
  readonly oddsRatio: { readonly estimate: number; readonly interval: Interval; readonly p: number };
  /** Odds ratio of success for one grade more. */
  readonly grade: { readonly estimate: number; readonly interval: Interval };
}

/** Failures in the order of treatment, against what the grades lead to expect. */
export interface Practice {
  readonly steps: readonly {
    readonly id: string;
    readonly order: number;
    readonly grade: string;
    readonly failed: boolean;
    /** Failures seen so far less those expected of such grades. */
    readonly excess: number;
  }[];
  /** Where the expectation comes from, to be printed with it. */
  readonly expectation: string;
  /** Odds ratio of success for so many further cases, grade held equal. */
  readonly effect:
    | { readonly perCases: number; readonly estimate: number; readonly interval: Interval; readonly p: number }
    | NotEstimable;
  readonly operators: readonly {
    readonly operator: string;
    readonly cases: readonly string[];
    readonly failed: readonly string[];
  }[];
  /** Without a grade, so without an expectation. */
  readonly leftOut: readonly string[];
}

/** What becomes of the rate when limbs of one child are not taken for independent. */
export interface TwoLimbs {
  readonly children: number;
  /** A child counts as a success when every analysed limb does. */
  readonly perChild: Rate;
  readonly firstLimb: Rate;
  /** All limbs, the interval widened as if those of one child told nothing new. */
  readonly fullDependence: { readonly effectiveCases: number; readonly interval: Interval } | NotEstimable;
}

/** What the page of a case carries: never an identifier. */
export interface CaseCard {
  readonly id: string;
  readonly row: number;
  readonly order: number;
  readonly child: string;
  readonly grade: string | null;
  readonly firstTechnique: Technique | null;
  readonly finalTechnique: Technique | null;
  readonly outcome: "success" | "failure" | "asked" | "not judged";
  readonly complications: readonly string[] | null;
  readonly operator: string | null;
  readonly followUpMonths: number | null;
}

/** Everything printed anywhere, unrounded. */
export interface Findings {
  readonly kit: { readonly name: "denominator"; readonly version: string };
  readonly sheet: { readonly file: string; readonly sha256: string };
  readonly plan: { readonly title: string; readonly note?: string; readonly frozen?: string; readonly sha256: string };
  readonly seed: number;
  readonly level: number;
  readonly unit: "limb" | "child";
  /** The limb in the singular, for sentences. */
  readonly limb: string;
  readonly success: { readonly kind: SuccessKind; readonly says: string; readonly primary: boolean };
  /** Questions about cells; those about the whole file are not counted. */
  readonly openQuestions: number;
  readonly cases: readonly CaseCard[];
  readonly who: { readonly ladder: readonly Denominator[]; readonly bilateralChildren: readonly string[] };
  readonly howOften: {
    readonly overall: Rate;
    readonly byGrade: readonly GradeRate[];
    readonly withoutGrade: readonly string[];
    readonly trend:
      | {
          /** null when the exact distribution would take too long. */
          readonly exact: { readonly pointProbability: number; readonly doubled: number } | null;
          readonly asymptotic: { readonly z: number; readonly p: number };
        }
      | NotEstimable;
  };
  readonly comparison: Comparison | NotEstimable;
  readonly ladder: readonly LadderRow[] | NotEstimable;
  readonly subgroups: readonly Subgroup[];
  readonly wentWrong: {
    readonly failures: readonly FailureLine[];
    readonly complications: readonly ComplicationRow[] | NotEstimable;
  };
  readonly missing: Loss;
  readonly arm: MotionLoss | NotEstimable;
  readonly adjusted: Adjusted | NotEstimable;
  readonly practice: Practice | NotEstimable;
  readonly regrading: Regrading | NotEstimable;
  readonly twoLimbs: TwoLimbs | NotEstimable;
}
