import type { Judgement } from "../plan/judge.js";
import type { SuccessKind, Technique } from "../plan/types.js";

/** One limb (or one child, when the plan's unit is the child) that entered the ledger. */
export interface LedgerCase {
  readonly id: string;
  readonly child: string;
  /** 1-based row in the file. */
  readonly row: number;
  /** Rank in the order of treatment, from 1; file order where no date settles it. */
  readonly order: number;
  readonly operator: string | null;
  readonly side: string | null;
  readonly sex: string | null;
  readonly ageYears: number | null;
  /** null when not recorded or still asked. */
  readonly grade: string | null;
  /** A question on the grade is open. */
  readonly gradeAsked: boolean;
  readonly measurement: number | null;
  /** Readings of the plan's columns in their order; null where not read. Empty when the plan names none. */
  readonly readings: readonly (number | null)[];
  /** The grade that the measurement gives at the plan's cut-points. */
  readonly gradeByMeasurement: string | null;
  readonly firstTechnique: Technique | null;
  readonly finalTechnique: Technique | null;
  readonly converted: boolean;
  /** A question on a technique is open. */
  readonly techniqueAsked: boolean;
  readonly success: Readonly<Partial<Record<SuccessKind, Judgement>>>;
  /** null when not recorded. */
  readonly complications: readonly string[] | null;
  readonly reason: string | null;
  readonly followUpMonths: number | null;
  /** Loss of motion against the other side, in the unit of the sheet; null where it cannot be had. */
  readonly motionInjured: number | null;
  readonly motionOther: number | null;
  readonly subgroups: readonly (readonly [name: string, judgement: Judgement])[];
}

/** Who left between one denominator and the next. */
export interface Leavers {
  readonly reason: string;
  readonly cases: readonly string[];
  /** Children all of whose remaining limbs left here. */
  readonly children: readonly string[];
}

export const denominatorNames = ["screened", "eligible", "followed", "analysed"] as const;
export type DenominatorName = (typeof denominatorNames)[number];

/** One rung of the ladder of denominators: the rung above less its leavers, in both units. */
export interface Denominator {
  readonly name: DenominatorName;
  readonly cases: readonly string[];
  readonly children: readonly string[];
  readonly leavers: readonly Leavers[];
}

export interface Ledger {
  readonly unit: "limb" | "child";
  readonly grades: readonly string[];
  readonly cases: readonly LedgerCase[];
  /** One ladder for each kind of success: they differ in who could be judged. */
  readonly ladders: Readonly<Partial<Record<SuccessKind, readonly Denominator[]>>>;
  /** Cases whose entry (exclusion, loss) is still asked; they are counted in until answered. */
  readonly entryAsked: readonly string[];
}

/** A count that cannot be built unless its rows add up: the successes are among the trials. */
export interface CaseCount {
  readonly unit: "limb" | "child";
  readonly successes: number;
  readonly trials: number;
  /** Ids of the cases that succeeded, of those that did not, and of those still asked. */
  readonly succeeded: readonly string[];
  readonly failed: readonly string[];
  readonly asked: readonly string[];
}
