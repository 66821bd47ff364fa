import { readFileSync } from "node:fs";
import type { LogisticData } from "../../../src/stats/models/logistic-data.js";

/** Columns of a comma-separated file of tests/reference/data, as text. */
export function sheet(file: string): Record<string, string[]> {
  const [header, ...lines] = readFileSync(`tests/reference/data/${file}`, "utf8").trim().split("\n");
  const rows = lines.map((line) => line.split(","));
  return Object.fromEntries(header!.split(",").map((name, at) => [name, rows.map((row) => row[at]!)]));
}

export const column = (of: Record<string, string[]>, name: string) => ({ name, values: of[name]!.map(Number) });

const kyphosisSheet = sheet("kyphosis.csv");
/** Deformity after spinal surgery in 81 children: Chambers and Hastie 1992. */
export const kyphosis: LogisticData = {
  successes: kyphosisSheet.Kyphosis!.map((value) => (value === "present" ? 1 : 0)),
  covariates: ["Age", "Number", "Start"].map((name) => column(kyphosisSheet, name)),
};

const endometrialSheet = sheet("endometrial.csv");
/** Grade of endometrial cancer in 79 patients: Heinze and Schemper 2002. */
export const endometrial: LogisticData = {
  successes: endometrialSheet.HG!.map(Number),
  covariates: ["NV", "PI", "EH"].map((name) => column(endometrialSheet, name)),
};

export function fitted<Fit extends object>(fit: Fit): Extract<Fit, { coefficients: unknown }> {
  if (!("coefficients" in fit)) throw new Error((fit as unknown as { because: string }).because);
  return fit as Extract<Fit, { coefficients: unknown }>;
}
