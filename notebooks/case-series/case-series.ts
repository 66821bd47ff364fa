import { version } from "../../package.json";
import { readCases } from "../../src/cases/read-cases.js";
import type { CaseTable, RawSheet } from "../../src/cases/types.js";
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
import { sections } from "../../src/report/sections.js";
import type { Section } from "../../src/report/text.js";
import { readingView, type ReadingView } from "./reading-view.js";
import type { Settings } from "./settings.js";

/** A sheet as it was read, with the bytes it came from. */
export interface Source {
  readonly bytes: Uint8Array<ArrayBuffer>;
  readonly sheet: RawSheet;
}

/** Everything the page of questions shows. */
export interface Page {
  readonly findings: Findings;
  readonly sections: readonly Section[];
  readonly pictures: readonly SectionPicture[];
}

/** Every cell of the notebook: the sheet, what the reader sets, and what follows from both. */
export interface CaseSeries extends Settings {
  readonly source: Source;
  readonly table: CaseTable;
  /** What the page draws of the table. */
  readonly reading: ReadingView;
  readonly plan: DraftedPlan;
  readonly provenance: Provenance;
  /** Null until confirmed, as the page is. */
  readonly ledger: Ledger | null;
  readonly page: Page | null;
}

const cell = cellsOf<CaseSeries>();

/**
 * The notebook of a sheet.
 * @param onProgress told while the sheet is read, with the share that is done
 */
export const caseSeries = (source: Source, start: Settings, onProgress: (share: number) => void = () => {}) => [
  cell("source", [], () => source),
  cell("givenPlan", [], () => start.givenPlan),
  cell("roles", [], () => start.roles),
  cell("answers", [], () => start.answers),
  cell("confirmed", [], () => start.confirmed),
  cell("level", [], () => start.level),
  cell("success", [], () => start.success),
  cell("table", ["source", "givenPlan", "roles", "answers"], ({ sheet }, given, roles, answers) =>
    readCases(sheet, { answers, roles: { ...given?.plan.roles, ...roles }, onProgress }),
  ),
  cell("reading", ["source", "table"], ({ sheet }, table) => readingView(sheet, table)),
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
  cell("ledger", ["confirmed", "table", "plan"], (confirmed, table, { plan }) =>
    confirmed ? buildLedger(table, plan) : null,
  ),
  cell(
    "page",
    ["ledger", "table", "plan", "provenance", "level", "success"],
    (ledger, table, { plan }, provenance, level, success) => {
      if (ledger === null) return null;
      const kind = plan.success.some((one) => one.kind === success) ? success! : plan.primary;
      const findings = findingsOf(ledger, table, plan, provenance, { level, success: kind });
      return { findings, sections: sections(findings), pictures: sectionPictures(findings) };
    },
  ),
];
