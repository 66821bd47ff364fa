import type { Plan, SuccessKind } from "../../src/plan/types.js";
import { untouched, type Edits } from "./edit-history.js";

/** A plan that came from a file. */
export interface GivenPlan {
  readonly plan: Plan;
  readonly file: string;
}

/** What the reader sets; everything else follows from it and the sheet. */
export interface Settings extends Edits {
  /** Null: the plan is drafted from the sheet. */
  readonly givenPlan: GivenPlan | null;
  /** Nothing is counted before the reader has confirmed what the columns mean. */
  readonly confirmed: boolean;
  /** Coverage of all intervals, a fraction. */
  readonly level: number;
  /** Null: the primary success of the plan. */
  readonly success: SuccessKind | null;
}

/** Before anybody said anything. */
export const unset: Settings = { ...untouched.now, givenPlan: null, confirmed: false, level: 0.95, success: null };
