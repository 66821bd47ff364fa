import { version } from "../../package.json";
import { readCases } from "../../src/cases/read-cases.js";
import type { Answers, CaseTable, RawSheet, Role } from "../../src/cases/types.js";
import { sectionPictures, type SectionPicture } from "../../src/charts/section-pictures.js";
import { toJson } from "../../src/report/json.js";
import { findingsOf, type Provenance } from "../../src/findings/findings.js";
import { sha256 } from "../../src/findings/sha256.js";
import type { Findings } from "../../src/findings/types.js";
import { buildLedger } from "../../src/ledger/build-ledger.js";
import type { Ledger } from "../../src/ledger/types.js";
import { cellsOf } from "../../src/notebook/cells.js";
import { checkPlan } from "../../src/plan/check-plan.js";
import { draftPlan, type DraftedPlan } from "../../src/plan/draft-plan.js";
import type { Plan, SuccessKind } from "../../src/plan/types.js";
import { sections } from "../../src/report/sections.js";
import type { Section } from "../../src/report/text.js";

/** A sheet as it was read, with the bytes it came from. */
export interface Source {
  readonly bytes: Uint8Array<ArrayBuffer>;
  readonly sheet: RawSheet;
}

/** A plan that came from a file. */
export interface GivenPlan {
  readonly plan: Plan;
  readonly file: string;
}

/** Everything the page of questions shows. */
export interface Page {
  readonly findings: Findings;
  readonly sections: readonly Section[];
  readonly pictures: readonly SectionPicture[];
}

/** Every cell of the notebook; the first seven are set by the reader. */
export interface CaseSeries {
  source: Source;
  /** Null: the plan is drafted from the sheet. */
  givenPlan: GivenPlan | null;
  /** Roles that the reader corrected, by column name. */
  roles: Readonly<Record<string, Role>>;
  answers: Answers;
  /** Nothing is counted before the reader has confirmed what the columns mean. */
  confirmed: boolean;
  level: number;
  /** Null: the primary success of the plan. */
  success: SuccessKind | null;
  table: CaseTable;
  plan: DraftedPlan;
  provenance: Provenance;
  ledger: Ledger;
  /** Null until confirmed. */
  page: Page | null;
}

const cell = cellsOf<CaseSeries>();

/** The notebook, starting from a sheet and a plan that were confirmed elsewhere. */
export const caseSeries = (source: Source, givenPlan: GivenPlan | null) => [
  cell("source", [], () => source),
  cell("givenPlan", [], () => givenPlan),
  cell("roles", [], () => ({})),
  cell("answers", [], () => ({})),
  cell("confirmed", [], () => true),
  cell("level", [], () => 0.95),
  cell("success", [], () => null),
  cell("table", ["source", "givenPlan", "roles", "answers"], ({ sheet }, given, roles, answers) =>
    readCases(sheet, { answers, roles: { ...given?.plan.roles, ...roles } }),
  ),
  cell("plan", ["table", "givenPlan", "roles"], (table, given, roles) => {
    if (given === null) return draftPlan(table);
    checkPlan(given.plan, table, given.file);
    const corrected = { ...given.plan.roles, ...roles };
    return {
      plan: { ...given.plan, ...(Object.keys(corrected).length > 0 ? { roles: corrected } : {}) },
      assumptions: [],
    };
  }),
  cell("provenance", ["source", "plan"], async ({ bytes }, { plan }) => ({
    version,
    sheetSha256: await sha256(bytes),
    planSha256: await sha256(new TextEncoder().encode(toJson(plan))),
  })),
  cell("ledger", ["table", "plan"], (table, { plan }) => buildLedger(table, plan)),
  cell(
    "page",
    ["confirmed", "ledger", "table", "plan", "provenance", "level", "success"],
    (confirmed, ledger, table, { plan }, provenance, level, success) => {
      if (!confirmed) return null;
      const kind = plan.success.some((one) => one.kind === success) ? success! : plan.primary;
      const findings = findingsOf(ledger, table, plan, provenance, { level, success: kind });
      return { findings, sections: sections(findings), pictures: sectionPictures(findings) };
    },
  ),
];
