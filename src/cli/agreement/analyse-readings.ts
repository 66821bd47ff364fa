import { basename } from "node:path";
import { readReadings } from "../../cases/readings/read-readings.js";
import type { ReadingsOptions } from "../../cases/readings/types.js";
import { readSheet } from "../../cases/read-sheet.js";
import { gradeFindings } from "../../findings/agreement/grade-findings.js";
import { measurementFindings } from "../../findings/agreement/measurement-findings.js";
import type { AgreementOptions } from "../../findings/agreement/table-findings.js";
import { readingsAgreementText } from "../../report/agreement/readings-agreement-text.js";

interface FileOptions extends AgreementOptions {
  readonly as?: "grades" | "measurements";
  readonly grades?: string;
}

/**
 * Agreement from a file of readings, with the fields of the contract.
 * @throws SheetError naming file, row, column and rule
 */
export async function analyseReadings(
  bytes: Uint8Array,
  file: string,
  options: FileOptions,
): Promise<{ readonly result: object; readonly text: string }> {
  const sheet = await readSheet(bytes, basename(file));
  const asked: ReadingsOptions = {
    ...(options.as ? { as: options.as } : {}),
    ...(options.grades === undefined ? {} : { grades: options.grades.split(",") }),
  };
  const readings = readReadings(sheet, asked);
  const graded = readings.kind === "grades" ? gradeFindings(readings, options) : null;
  const measured =
    readings.kind === "measurements" || readings.numbers !== null ? measurementFindings(readings, options) : null;
  const text = readingsAgreementText(readings, graded, measured);
  const named = ([a, b]: readonly [number, number]): [string, string] => [
    readings.columns[a]!.name,
    readings.columns[b]!.name,
  ];
  const measuredFields = measured && {
    icc: measured.icc,
    otherIcc: measured.otherIcc,
    standardErrorOfMeasurement: measured.error,
    repeats: measured.repeats,
  };
  const shared = {
    file: readings.file,
    kind: readings.kind,
    images: readings.radiographs.length,
    notes: readings.notes,
  };
  if (graded === null) {
    const pairs = measured!.pairs.map(({ raters, ...pair }) => ({ raters: named(raters), ...pair }));
    return {
      result: { ...shared, level: options.level, pairs, alpha: { interval: measured!.alpha }, ...measuredFields },
      text,
    };
  }
  const pairs = graded.pairs.map(({ raters, crossTable, ...pair }, k) => ({
    raters: named(raters),
    n: crossTable.n,
    table: crossTable.table,
    ...pair,
    bootstrapLinear: graded.pairBootstrap[k],
    ...(measured ? { limits: measured.pairs[k]!.limits } : {}),
  }));
  const { kind: _kind, images: _images, pairBootstrap: _pairBootstrap, pooled, ...others } = graded;
  const rest = { ...others, pooledColumns: pooled.map((place) => readings.columns[place]!.name) };
  return { result: { ...shared, ...rest, pairs, ...measuredFields }, text };
}
