import type { CaseTable } from "../cases/types.js";
import { buildLedger } from "../ledger/build-ledger.js";
import type { Denominator, Ledger, LedgerCase } from "../ledger/types.js";
import type { Judgement } from "../plan/judge.js";
import type { Plan, SuccessKind } from "../plan/types.js";
import { adjusted } from "./adjusted.js";
import { arm } from "./arm.js";
import { comparison } from "./comparison.js";
import { howOften } from "./how-often.js";
import { loss } from "./loss.js";
import { practice } from "./practice.js";
import { rate, type RateOptions } from "./rate.js";
import { regrading } from "./regrading/regrading.js";
import { techniqueLadder } from "./technique-ladder.js";
import type { CaseCard, Findings, Subgroup } from "./types.js";
import { twoLimbs } from "./two-limbs.js";
import { wentWrong } from "./went-wrong.js";

/** Where findings come from, for the record. */
export interface Provenance {
  readonly version: string;
  /** SHA-256 of the sheet's bytes and of the plan's text, hexadecimal. */
  readonly sheetSha256: string;
  readonly planSha256: string;
}

export interface FindingsOptions {
  /** Coverage of all intervals, in (0, 1); default 0.95. */
  readonly level?: number;
  /** Which success is counted; default the plan's primary. */
  readonly success?: SuccessKind;
  readonly seed?: number;
}

/**
 * Everything printed anywhere, unrounded, each count with the cases behind it.
 * @throws RangeError when the level is out of range or the plan defines no such success
 */
export function findings(
  table: CaseTable,
  plan: Plan,
  provenance: Provenance,
  options: FindingsOptions = {},
): Findings {
  return findingsOf(buildLedger(table, plan), table, plan, provenance, options);
}

/** The same from a ledger already built: what a control of the page redraws from. */
export function findingsOf(
  ledger: Ledger,
  table: CaseTable,
  plan: Plan,
  provenance: Provenance,
  { level = 0.95, success = plan.primary, seed = 1 }: FindingsOptions = {},
): Findings {
  const rule = plan.success.find(({ kind }) => kind === success);
  if (rule === undefined) throw new RangeError(`findings: the plan defines no success of the kind ${success}`);
  const byId = new Map(ledger.cases.map((one) => [one.id, one]));
  const caseOf = (id: string): LedgerCase => byId.get(id)!;
  const judgementOf = (one: LedgerCase): Judgement | undefined => one.success[success];
  const ladder = ledger.ladders[success]!;
  const rung = (name: Denominator["name"]): LedgerCase[] => ladder.find((one) => one.name === name)!.cases.map(caseOf);
  const [analysed, eligible] = [rung("analysed"), rung("eligible")];
  const inAnalysis = new Set(analysed.map(({ id }) => id));
  const asked = new Set(ledger.entryAsked);
  const rates: RateOptions = { unit: ledger.unit, level, mayLeave: ({ id }) => asked.has(id) };
  return {
    kit: { name: "denominator", version: provenance.version },
    sheet: { file: table.file, sha256: provenance.sheetSha256 },
    plan: {
      title: plan.title,
      ...(plan.note === undefined ? {} : { note: plan.note }),
      ...(plan.frozen === undefined ? {} : { frozen: plan.frozen }),
      sha256: provenance.planSha256,
    },
    seed,
    level,
    unit: ledger.unit,
    limb: ledger.unit === "child" ? "child" : plan.limb,
    success: { kind: success, says: rule.says, primary: success === plan.primary },
    openQuestions: table.questions.filter(({ rows }) => rows.length > 0).length,
    cases: ledger.cases.map((one) => caseCard(one, inAnalysis, judgementOf)),
    who: { ladder, bilateralChildren: bilateral(analysed) },
    howOften: howOften(analysed, ledger.grades, judgementOf, rates),
    comparison:
      plan.technique === undefined
        ? { estimate: null, because: "the plan names no technique" }
        : comparison(analysed, ledger.grades, judgementOf, rates),
    ladder:
      plan.technique?.final === undefined
        ? { estimate: null, because: "the sheet keeps one technique only, so conversions cannot be seen" }
        : techniqueLadder(eligible, ledger.grades),
    subgroups: plan.subgroups.map(({ name }, i) => subgroup(name, i, analysed, judgementOf, rates)),
    wentWrong: wentWrong({ analysed, eligible }, plan, judgementOf, rates),
    missing: loss(ladder, caseOf, ledger.grades, judgementOf, rates),
    arm:
      plan.motion === undefined
        ? { estimate: null, because: "the plan names no motion of both sides" }
        : arm(analysed, ledger.grades, { name: plan.motion.name, level, bothSides: bilateral(ledger.cases) }),
    adjusted: adjusted(analysed, ledger.grades, judgementOf, level),
    twoLimbs: twoLimbs(analysed, judgementOf, rates),
    practice: practice(analysed, ledger.grades, judgementOf, level),
    regrading: regrading({ analysed, all: ledger.cases }, plan, judgementOf, { ...rates, kind: success, seed }),
  };
}

function caseCard(
  one: LedgerCase,
  analysed: ReadonlySet<string>,
  judgementOf: (one: LedgerCase) => Judgement | undefined,
): CaseCard {
  const { id, row, order, child, grade, firstTechnique, finalTechnique, complications, operator, followUpMonths } = one;
  const words = { yes: "success", no: "failure", asked: "asked", unknown: "not judged" } as const;
  const outcome = analysed.has(id) ? words[judgementOf(one) ?? "unknown"] : "not judged";
  return {
    id,
    row,
    order,
    child,
    grade,
    firstTechnique,
    finalTechnique,
    outcome,
    complications,
    operator,
    followUpMonths,
  };
}

/** Children with limbs of more than one side; limbs whose side is not recorded are taken for different ones. */
function bilateral(cases: readonly LedgerCase[]): string[] {
  const sides = new Map<string, Set<string>>();
  for (const { child, side, id } of cases) sides.set(child, (sides.get(child) ?? new Set()).add(side ?? id));
  return [...sides].filter(([, seen]) => seen.size > 1).map(([child]) => child);
}

function subgroup(
  name: string,
  index: number,
  cases: readonly LedgerCase[],
  judgementOf: (one: LedgerCase) => Judgement | undefined,
  options: RateOptions,
): Subgroup {
  const where = (answer: Judgement): LedgerCase[] => cases.filter(({ subgroups }) => subgroups[index]![1] === answer);
  return {
    name,
    inside: rate(where("yes"), judgementOf, options),
    outside: rate(where("no"), judgementOf, options),
    notKnown: [...where("unknown"), ...where("asked")].map(({ id }) => id),
  };
}
