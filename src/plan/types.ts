import type { Role } from "../cases/types.js";

/** What success means: the fracture reduced as planned, its position at union, or the motion at the last review. */
export const successKinds = ["technical", "position", "motion"] as const;
export type SuccessKind = (typeof successKinds)[number];

/** The ladder of techniques, least invasive first. */
export const techniques = ["closed", "assisted", "open"] as const;
export type Technique = (typeof techniques)[number];

export const comparators = ["=", "in", "<", "≤", ">", "≥", "present"] as const;
export type Comparator = (typeof comparators)[number];

/** A test of one column: the named comparator with its value; "present" takes true or false. */
export interface ColumnTest {
  readonly column: string;
  readonly "="?: string | number | boolean;
  readonly in?: readonly (string | number)[];
  readonly "<"?: number;
  readonly "≤"?: number;
  readonly ">"?: number;
  readonly "≥"?: number;
  readonly present?: boolean;
}

/** A rule on the columns of one case. */
export type Rule =
  ColumnTest | { readonly all: readonly Rule[] } | { readonly any: readonly Rule[] } | { readonly not: Rule };

export interface NamedRule {
  readonly name: string;
  readonly rule: Rule;
}

/** Grades as recorded, or cut from a measurement: a value above a cut-point belongs to the next grade. */
export type GradePlan =
  | { readonly column: string; readonly order: readonly string[] }
  | { readonly measurement: string; readonly cutPoints: readonly number[]; readonly order: readonly string[] };

/** The measurement that the grade stands on, and how well observers measure it. */
export interface MeasurementPlan {
  readonly column: string;
  readonly cutPoints: readonly number[];
  /**
   * Columns with readings of the same radiograph, at least two in all: a column an observer, or a list of columns where one
   * observer read more than once.
   */
  readonly readings?: readonly (string | readonly string[])[];
  /** A standard error of measurement decided on beforehand, in the unit of the column; it goes before that of the readings. */
  readonly error?: number;
  /** Grades treated open by the unit's own rule, so that treatments that another grade would change can be counted. */
  readonly treatedOpen?: readonly string[];
}

export interface TechniquePlan {
  readonly first: string;
  /** Without it nothing is known of conversions. */
  readonly final?: string;
  /** Values of the two columns, per step of the ladder. */
  readonly closed: readonly string[];
  readonly assisted: readonly string[];
  readonly open: readonly string[];
  /** A closed attempt that ends in one of these counts as a failure of closed treatment. */
  readonly conversionFails: readonly ("assisted" | "open")[];
}

export interface SuccessPlan {
  readonly kind: SuccessKind;
  /** The rule in words, as the paper prints it. */
  readonly says: string;
  readonly rule: Rule;
}

/** What was decided before the outcomes were looked at. */
export interface Plan {
  readonly title: string;
  /** Printed on every page and figure, e.g. that the data are invented. */
  readonly note?: string;
  /** ISO date on which the plan was frozen; without it the page says that it was not. */
  readonly frozen?: string;
  readonly unit: "limb" | "child";
  /** The limb in the singular, for sentences ("shoulder"). */
  readonly limb: string;
  /** The sheet's own case number, where it has one. */
  readonly id?: string;
  readonly child?: string;
  readonly side?: string;
  /** Column that puts the cases in order of treatment. */
  readonly order?: string;
  readonly operator?: string;
  readonly age?: string;
  readonly sex?: string;
  readonly exclusions: readonly NamedRule[];
  /** When true the case was lost before the outcome was known. */
  readonly lost?: Rule;
  readonly grade?: GradePlan;
  /** The column of the measurement that the grade stands on, where the grade itself is recorded. */
  readonly measurement?: MeasurementPlan;
  readonly technique?: TechniquePlan;
  readonly success: readonly SuccessPlan[];
  /** The success that was named as the primary outcome. */
  readonly primary: SuccessKind;
  /** Shown apart and marked exploratory. */
  readonly subgroups: readonly NamedRule[];
  readonly complications?: {
    readonly column: string;
    /** The kinds looked for in every case, so that their zero rows can be printed. */
    readonly searched: readonly string[];
  };
  readonly reason?: string;
  readonly followUp?: { readonly column: string; readonly minimumMonths?: number };
  readonly motion?: { readonly injured: string; readonly other: string; readonly name: string };
  /** Counts below this are hidden in files made for sharing. */
  readonly smallCells?: number;
  /** Roles that a person corrected. */
  readonly roles?: Readonly<Record<string, Role>>;
}
