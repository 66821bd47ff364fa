import type { PrintedNumber } from "../text/token.js";
import type { IntervalMethod } from "./interval-methods.js";

/** Where a fact stands: token numbers within its sentence, `to` exclusive. */
export interface Place {
  readonly from: number;
  readonly to: number;
}

/** A printed number with the unit mark that followed it. */
export interface Quantity extends PrintedNumber {
  readonly unit: "percent" | "points" | "other" | null;
}

/** "31 of 37", "all 19", "none of 24". `unit` is the noun counted, singular; null when none is printed. */
export interface CountFact extends Place {
  readonly kind: "count";
  readonly successes: number;
  readonly trials: number;
  readonly form: "of" | "all" | "none";
  readonly unit: string | null;
}

/** "41 (87%)" or "n = 41": a count whose whole stands elsewhere. */
export interface PartFact extends Place {
  readonly kind: "part";
  readonly value: number;
  readonly noun: string | null;
}

/** "the 48 fractures", "n = 30": a whole. `leads` is true when the sentence distributes it ("Of 48 fractures, ..."). */
export interface WholeFact extends Place {
  readonly kind: "whole";
  readonly value: number;
  readonly unit: string | null;
  readonly leads: boolean;
}

export interface PercentFact extends Place {
  readonly kind: "percent";
  readonly number: Quantity;
  /** "87% of 47 fractures": the whole, when printed so. */
  readonly trials: number | null;
  /** "87% of children": the noun after "of". */
  readonly unit: string | null;
  /** A change or difference and no share: it may be negative. */
  readonly change?: boolean;
  /** False for a bare number that stands where a percentage would. */
  readonly marked: boolean;
  /** "0.87" beside its count: the share as printed; `number` is a hundred times it. */
  readonly fraction?: PrintedNumber;
}

export interface IntervalFact extends Place {
  readonly kind: "interval";
  /** null when no level is printed. */
  readonly level: number | null;
  /** False for a bare "(75-94)" after a percentage. */
  readonly labelled: boolean;
  readonly low: Quantity;
  readonly high: Quantity;
  /** Words between label and numbers, such as "for the difference". */
  readonly about: readonly string[];
  /** "exact 95% CI": the method named beside it. */
  readonly method: IntervalMethod | null;
}

/** "upper one-sided 95% confidence limit 5%". */
export interface LimitFact extends Place {
  readonly kind: "limit";
  readonly side: "upper" | "lower" | null;
  readonly level: number | null;
  readonly oneSided: boolean | null;
  readonly limit: Quantity;
}

export const relations = ["=", "<", ">", "≤", "≥", "not significant"] as const;

export interface PFact extends Place {
  readonly kind: "p";
  readonly relation: (typeof relations)[number];
  readonly number: PrintedNumber | null;
  readonly about: readonly string[];
}

export const measures = [
  "odds ratio",
  "risk ratio",
  "difference",
  "hazard ratio",
  "number needed to treat",
  "relative reduction",
  "ratio",
  "coefficient",
] as const;
export type Measure = (typeof measures)[number];

export interface EffectFact extends Place {
  readonly kind: "effect";
  readonly measure: Measure;
  readonly number: Quantity;
  /** Words before and after the label: "adjusted", "mean", "for failure". */
  readonly about: readonly string[];
  /** The standard error printed beside it. */
  readonly se?: PrintedNumber;
}

export interface KappaFact extends Place {
  readonly kind: "kappa";
  readonly number: PrintedNumber;
  readonly weights: "unweighted" | "linear" | "quadratic" | "weighted" | null;
  readonly several: boolean;
}

export interface MeanFact extends Place {
  readonly kind: "mean";
  readonly centre: "mean" | "median";
  readonly number: Quantity;
  readonly sd: PrintedNumber | null;
  readonly se: PrintedNumber | null;
  readonly range: { readonly low: PrintedNumber; readonly high: PrintedNumber } | null;
  readonly quartiles: { readonly low: PrintedNumber; readonly high: PrintedNumber } | null;
  /** "31 months (24 to 58)": a range, quartiles or an interval, the text does not say which. */
  readonly unnamed: { readonly low: PrintedNumber; readonly high: PrintedNumber } | null;
  readonly trials: number | null;
  /** The values are whole numbers by the text's own words ("in completed years", "number of"). */
  readonly whole: boolean;
}

export interface StatisticFact extends Place {
  readonly kind: "statistic";
  readonly name: "chi-square" | "t" | "z";
  readonly number: PrintedNumber;
  readonly df: number | null;
}

export type Fact =
  | CountFact
  | PartFact
  | WholeFact
  | PercentFact
  | IntervalFact
  | LimitFact
  | PFact
  | EffectFact
  | KappaFact
  | MeanFact
  | StatisticFact;
