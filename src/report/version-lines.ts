import type { VersionChanges } from "../cases/compare-versions.js";
import type { MovedNumber } from "./moved-numbers.js";

/** What a new version of a sheet changed: cases, columns, cells, and the printed numbers that moved by it. */
export interface VersionReport extends VersionChanges {
  readonly moved: readonly MovedNumber[];
  /** Why the numbers of the earlier version could not be compared. */
  readonly uncounted?: string;
}

/** The changes as lines of text, each kind under its own heading; one line when nothing changed. */
export function versionLines(report: VersionReport): { readonly heading: string; readonly lines: readonly string[] }[] {
  const place = ({ id, row }: { readonly id: string; readonly row: number }): string => `${id} (row ${row})`;
  const kinds = [
    { heading: "Cases added", lines: report.added.map(place) },
    { heading: "Cases removed", lines: report.removed.map(place) },
    { heading: "Cells changed", lines: report.changed.map((one) => `${place(one)}, ${one.column}: ${moved(one)}`) },
    { heading: "Columns added", lines: report.addedColumns },
    { heading: "Columns removed", lines: report.removedColumns },
    { heading: "Columns renamed", lines: report.renamed.map(moved) },
    {
      heading: "Answers that no longer fit, asked again",
      lines: (report.unfit ?? []).map(({ question, answer }) => `${question}: ${answer}`),
    },
    { heading: "Printed numbers that moved", lines: report.moved.map(movedLine) },
    {
      heading: "Numbers not compared: the plan does not fit the earlier version",
      lines: report.uncounted?.split("\n") ?? [],
    },
  ].filter(({ lines }) => lines.length > 0);
  return kinds.length > 0 ? kinds : [{ heading: "Nothing changed", lines: [] }];
}

function movedLine({ question, line, before, after }: MovedNumber): string {
  return `${question} ${line === "" ? "" : `${line}: `}${moved({ before, after })}`;
}

function moved({ before, after }: { readonly before: string | null; readonly after: string | null }): string {
  return `${before ?? "not printed"} -> ${after ?? "no longer printed"}`;
}
