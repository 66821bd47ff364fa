import { version } from "../../../package.json";
import { findings as findingsOf } from "../../findings/findings.js";
import { sha256 } from "../../findings/sha256.js";
import type { Findings } from "../../findings/types.js";
import { movedNumbers } from "../../report/moved-numbers.js";
import type { VersionReport } from "../../report/version-lines.js";
import { csvTable } from "../../report/csv-table.js";
import { htmlReport, reportStyles } from "../../report/html-report.js";
import { sections as sectionsOf } from "../../report/sections.js";
import { plainText, type Section } from "../../report/text.js";
import { InputError } from "../input-error.js";
import { toJson } from "../../report/json.js";
import { progress } from "../progress.js";
import { drawFigures } from "./draw-figures.js";
import { readSeries, successKind, type SeriesFiles } from "./read-series.js";

export interface MadeReport {
  /** Contents by path inside the output folder. */
  readonly files: Map<string, string | Uint8Array>;
  readonly findings: Findings;
  readonly assumptions: readonly string[];
  readonly summary: string;
  /** Since the earlier version of the sheet, where one was named. */
  readonly changes?: VersionReport;
}

interface MakeReportOptions extends SeriesFiles {
  readonly level?: string;
  readonly success?: string;
}

/** Everything that `report` writes, made in memory: the same input gives the same bytes. */
export async function makeReport(path: string, options: MakeReportOptions): Promise<MadeReport> {
  const said = progress("report");
  const level = Number(options.level ?? "0.95");
  if (!(level > 0 && level < 1)) throw new InputError(`--level: must lie between 0 and 1, got ${options.level}`);
  const success = successKind(options.success);
  const { bytes, table, plan, drafted, assumptions, earlier } = await readSeries(path, options);
  said("sheet read");
  const planText = toJson(plan);
  const encoder = new TextEncoder();
  const provenance = { version, sheetSha256: await sha256(bytes), planSha256: await sha256(encoder.encode(planText)) };
  const counted = { level, ...(success === undefined ? {} : { success }) };
  const findings = findingsOf(table, plan, provenance, counted);
  const sections = sectionsOf(findings);
  const changes = earlier && {
    ...earlier.changes,
    moved: earlier.plan
      ? movedNumbers(sectionsOf(findingsOf(earlier.table, earlier.plan, provenance, counted)), sections)
      : [],
    ...(earlier.uncounted === undefined ? {} : { uncounted: earlier.uncounted }),
  };
  said("counted");
  const figures = await drawFigures(findings, said);
  const files = new Map<string, string | Uint8Array>([["findings.json", toJson(findings)]]);
  if (changes) files.set("changes.json", toJson({ before: earlier!.file, after: table.file, ...changes }));
  if (drafted) files.set("plan-drafted.json", planText);
  const styleHash = base64(await sha256(encoder.encode(reportStyles)));
  files.set("report.html", htmlReport({ findings, sections, figures: figures.bySection, assumptions, styleHash }));
  for (const [name, content] of figures.files) files.set(`figures/${name}`, content);
  for (const [name, content] of tableFiles(sections)) files.set(`tables/${name}`, content);
  return { files, findings, assumptions, summary: summary(findings, sections), ...(changes ? { changes } : {}) };
}

function tableFiles(sections: readonly Section[]): [string, string][] {
  return sections.flatMap(({ id, tables }) =>
    tables.map((table, i): [string, string] => [`${id}${tables.length > 1 ? `-${i + 1}` : ""}.csv`, csvTable(table)]),
  );
}

function summary(findings: Findings, sections: readonly Section[]): string {
  const open =
    findings.openQuestions > 0
      ? [`Open questions about the sheet: ${findings.openQuestions}. Run inspect to see them.`]
      : [];
  return [
    findings.plan.title,
    ...sections.map(({ question, answer }) => `\n${question}\n${answer.map(plainText).join("\n")}`),
    ...open,
  ].join("\n");
}

function base64(hexadecimal: string): string {
  return Buffer.from(hexadecimal, "hex").toString("base64");
}
