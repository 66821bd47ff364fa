import type { LedgerCase } from "../../ledger/types.js";
import type { Judgement } from "../../plan/judge.js";
import type { MeasurementPlan, Plan, SuccessKind } from "../../plan/types.js";
import { regradingChances } from "../../stats/regrading/regrading-chances.js";
import { successUnderRegrading } from "../../stats/regrading/success-under-regrading.js";
import type { NotEstimable } from "../../stats/types.js";
import { rate, type RateOptions } from "../rate.js";
import type { GradeRate } from "../types.js";
import { cutMoves } from "./cut-moves.js";
import { observersError } from "./observers-error.js";
import type { CutMoves, ObserversError, Regrading, RegradingChancesFound, SimulatedGrade } from "./types.js";

type Measured = LedgerCase & { readonly measurement: number; readonly gradeByMeasurement: string };

/**
 * What the observers' own error leaves open in the grades: chances of another grade, success by grade under simulated
 * gradings, and how far a cut-point can move before a direction turns.
 * @param groups.all every case of the sheet: the error is taken from all radiographs
 * @param options.kind the kind of success that is judged
 * @param options.seed of the simulated gradings
 */
export function regrading(
  { analysed, all }: { readonly analysed: readonly LedgerCase[]; readonly all: readonly LedgerCase[] },
  plan: Plan,
  judgementOf: (one: LedgerCase) => Judgement | undefined,
  options: RateOptions & { readonly kind: SuccessKind; readonly seed: number },
): Regrading | NotEstimable {
  const scale = scaleOf(plan);
  if ("estimate" in scale) return scale;
  const measured = analysed.filter((one): one is Measured => one.gradeByMeasurement !== null);
  if (measured.length === 0) return { estimate: null, because: "no analysed case has a measurement" };
  const { column, cutPoints: cuts, treatedOpen = [], grades } = scale;
  const error = observersError(all, scale, options.level);
  const asked = measured.some((one) => judgementOf(one) === "asked" || options.mayLeave?.(one) === true);
  const open: NotEstimable | null = asked
    ? { estimate: null, because: "questions are open on some of these cases" }
    : null;
  const outcomes = measured.map((one) => ({
    value: one.measurement,
    success: judgementOf(one) === "yes",
    technique: one.firstTechnique,
  }));
  const recorded = plan.grade !== undefined && "column" in plan.grade;
  return {
    column,
    cuts,
    grades,
    measured: ids(measured),
    notMeasured: ids(analysed.filter(({ gradeByMeasurement }) => gradeByMeasurement === null)),
    differing: recorded
      ? ids(measured.filter(({ grade, gradeByMeasurement }) => grade !== null && grade !== gradeByMeasurement))
      : null,
    byMeasuredGrade: grades.map((grade): GradeRate => {
      const within = measured.filter((one) => one.gradeByMeasurement === grade);
      return { grade, rate: rate(within, judgementOf, options) };
    }),
    treatedOpen,
    error,
    chances: error.estimate === null ? error : chances(measured, error, { cuts, grades, treatedOpen, ...options }),
    simulated: error.estimate === null ? error : (open ?? simulated(outcomes, error, { cuts, grades, ...options })),
    moves: open ?? kept(all, `${options.kind} ${cuts.join(" ")}`, () => cutMoves(outcomes, cuts)),
  };
}

interface Scale extends MeasurementPlan {
  readonly grades: readonly string[];
}

/** The measurement, its cut-points and the grades between them, as the ledger takes them. */
function scaleOf({ grade, measurement }: Plan): Scale | NotEstimable {
  if (grade === undefined) return { estimate: null, because: "the plan names no grade" };
  const grades = grade.order;
  const cut = "measurement" in grade ? { column: grade.measurement, cutPoints: grade.cutPoints } : undefined;
  const scale = measurement ?? cut;
  if (scale === undefined) return { estimate: null, because: "the plan names no measurement that the grade stands on" };
  if (scale.cutPoints.length === 0) return { estimate: null, because: "the plan names one grade only" };
  return { ...scale, grades };
}

interface Cutting {
  readonly cuts: readonly number[];
  readonly grades: readonly string[];
  readonly level: number;
}

function chances(
  cases: readonly Measured[],
  { estimate: error }: ObserversError,
  { cuts, grades, level, treatedOpen }: Cutting & { readonly treatedOpen: readonly string[] },
): RegradingChancesFound {
  const values = cases.map(({ measurement }) => measurement);
  const treatments = grades.map((grade) => (treatedOpen.includes(grade) ? "open" : "closed"));
  const held = regradingChances(values, { cuts, error, level });
  const read = regradingChances(values, { cuts, error, level, treatments, comparedWith: "another reading" });
  const found = cases.map(({ id, measurement: value, gradeByMeasurement, grade }, i) => ({
    id,
    value,
    measuredGrade: gradeByMeasurement,
    recordedGrade: grade,
    distance: Math.min(...cuts.map((cut) => Math.abs(value - cut))),
    otherTrueGrade: held.cases[i]!.changed,
    otherReadGrade: read.cases[i]!.changed,
  }));
  return {
    cases: found,
    near: ids(found.filter(({ distance }) => distance <= 1.96 * error).toSorted((a, b) => a.distance - b.distance)),
    trueGrades: held.grades,
    readGrades: read.grades,
    treatments: treatedOpen.length === 0 ? null : read.treatments,
  };
}

function simulated(
  outcomes: readonly { readonly value: number; readonly success: boolean }[],
  { estimate: error }: ObserversError,
  { cuts, grades, level, seed }: Cutting & { readonly seed: number },
): Regrading["simulated"] {
  const cases = outcomes.map(({ value, success }) => ({ value, success }));
  const found = successUnderRegrading(cases, { cuts, error, level, seed });
  return {
    simulations: found.simulations,
    seed,
    grades: found.grades.map(({ grade, simulatedTrials, simulated: success }): SimulatedGrade => ({
      grade: grades[grade]!,
      casesRange: simulatedTrials.range,
      success: "used" in success ? { estimate: success.estimate, range: success.range } : success,
    })),
  };
}

function ids(cases: readonly { readonly id: string }[]): string[] {
  return cases.map(({ id }) => id);
}

const movesOf = new WeakMap<readonly LedgerCase[], Map<string, CutMoves>>();

/** Moves hang on the ledger and the kind of success, not on the level: a page that redraws finds them ready. */
function kept(cases: readonly LedgerCase[], key: string, make: () => CutMoves): CutMoves {
  const known = movesOf.get(cases) ?? new Map<string, CutMoves>();
  const moves = known.get(key) ?? make();
  movesOf.set(cases, known.set(key, moves));
  return moves;
}
