import Papa from "papaparse";
import type { CountRow } from "../findings/count-rows.js";
import { harmless } from "./csv-table.js";

/** The counts-only file: one line a series, grade and technique; nothing of a single case is in it. */
export function countsCsv(series: string, rows: readonly CountRow[]): string {
  const lines = rows.map(({ grade, technique, successes, cases }) => [
    harmless(series),
    harmless(grade ?? "not recorded"),
    harmless(technique ?? "not recorded"),
    String(successes),
    String(cases),
  ]);
  return `${Papa.unparse([["series", "grade", "technique", "successes", "cases"], ...lines], { newline: "\r\n" })}\r\n`;
}
