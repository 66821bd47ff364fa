// How often the intervals of agreement hold: a table written by simulation (UPDATE_COVERAGE=1, some minutes) and checked
// in small against a fresh one on every run.
import { readFileSync, writeFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { describe, expect, it } from "vitest";
import { normalQuantile } from "../../src/numeric/normal.js";
import { random } from "../../src/numeric/random.js";
import { cohenKappa } from "../../src/stats/agreement/cohen-kappa.js";
import { crossTable } from "../../src/stats/agreement/cross-table.js";
import { fleissKappa } from "../../src/stats/agreement/fleiss-kappa.js";
import { gwetAc } from "../../src/stats/agreement/gwet-ac.js";
import { kappaBootstrap } from "../../src/stats/agreement/kappa-bootstrap.js";
import { drawReadings } from "../../src/stats/agreement-size/simulate-kappa-width.js";
import { blandAltman } from "../../src/stats/measurement-agreement/bland-altman.js";
import { intraclassCorrelation } from "../../src/stats/measurement-agreement/intraclass-correlation.js";

const file = fileURLToPath(new URL("../reference/agreement-coverage.md", import.meta.url));
const sizes = [30, 60, 200] as const;
const model = { shares: [0.35, 0.3, 0.25, 0.1], kappa: 0.6, raters: 3 };
const methods = [
  "kappa, linear weights, large-sample",
  "kappa, linear weights, BCa bootstrap (1,000 resamples)",
  "Fleiss' kappa, three raters",
  "AC1, three raters",
  "intraclass correlation 0.8, consistency, three raters",
  "upper limit of agreement, exact",
  "upper limit of agreement, form of 1986",
] as const;
type Limits = { readonly low: number; readonly high: number } | object | undefined;

/** Share of studies whose interval holds the truth, by method; studies without an interval are left out. */
function coverage(images: number, studies: number, seed: number, bootstrap: boolean): number[] {
  const stream = random(seed);
  const normal = (): number => normalQuantile(stream.uniform() * (1 - 2 ** -53) + 2 ** -54);
  const chance = model.shares.reduce((sum, share) => sum + share ** 2, 0);
  const agreed = model.kappa + (1 - model.kappa) * chance;
  const guess = (1 - chance) / (model.shares.length - 1);
  const ac1 = (agreed - guess) / (1 - guess);
  const held = methods.map(() => 0);
  const counted = methods.map(() => 0);
  const note = (k: number, interval: Limits, truth: number): void => {
    if (!interval || !("low" in interval)) return;
    counted[k]!++;
    if (interval.low <= truth && truth <= interval.high) held[k]!++;
  };
  for (let study = 0; study < studies; study++) {
    const readings = drawReadings(model, images, stream.uniform);
    const column = (rater: number) => readings.map((row) => row[rater]!);
    const { table } = crossTable(column(0), column(1), { grades: 4 });
    const intervalOf = (result: object): Limits => ("interval" in result ? (result.interval as Limits) : undefined);
    note(0, intervalOf(cohenKappa(table, { weights: "linear" })), model.kappa);
    if (bootstrap)
      note(1, intervalOf(kappaBootstrap(table, { weights: "linear", resamples: 1000, seed: study + 1 })), model.kappa);
    note(2, intervalOf(fleissKappa({ grades: 4, readings })), model.kappa);
    note(3, intervalOf(gwetAc({ grades: 4, readings })), ac1);
    const measured = Array.from({ length: images }, () => {
      const image = 2 * normal();
      return [image + normal(), image + normal(), image + normal()];
    });
    note(
      4,
      intervalOf(intraclassCorrelation(measured, { model: "two-way mixed", type: "consistency", unit: "single" })),
      0.8,
    );
    const limits = blandAltman(
      measured.map((row) => row[0]!),
      measured.map((row) => row[1]!),
    );
    if ("upper" in limits) {
      const truth = normalQuantile(0.975) * Math.SQRT2;
      note(5, limits.upper.exact, truth);
      note(6, limits.upper.approximate, truth);
    }
  }
  return held.map((count, k) => count / counted[k]!);
}

const studies = 4000;
if (process.env["UPDATE_COVERAGE"] === "1") {
  const columns = sizes.map((images) => coverage(images, studies, images, true));
  const percent = (share: number): string => `${(100 * share).toFixed(1)}%`;
  const lines = methods.map(
    (method, k) => `| ${method} | ${columns.map((column) => percent(column[k]!)).join(" | ")} |`,
  );
  writeFileSync(
    file,
    [
      `Share of 95% intervals that hold the truth in ${studies} simulated studies (standard error at most 0.4%). Grades I to IV with shares`,
      `${model.shares.join(", ")}, kappa ${model.kappa}; written by tests/docs/agreement-coverage.test.ts.`,
      "",
      `| interval | ${sizes.map((images) => `${images} radiographs`).join(" | ")} |`,
      `| --- | ${sizes.map(() => "---").join(" | ")} |`,
      ...lines,
      "",
    ].join("\n"),
  );
}

describe("the table of coverage", () => {
  const text = readFileSync(file, "utf8");
  const printed = methods.map((method) => {
    const line = text.split("\n").find((each) => each.split("|")[1]?.trim() === method)!;
    return line
      .split("|")
      .slice(2, 5)
      .map((cell) => Number.parseFloat(cell) / 100);
  });

  it.each(sizes)("agrees with fresh studies of %i radiographs", (images) => {
    const fresh = coverage(images, 500, images + 1, false);
    fresh.forEach((share, k) => {
      // Four standard errors of 500 studies.
      if (k !== 1) expect(Math.abs(share - printed[k]![sizes.indexOf(images)]!), methods[k]).toBeLessThan(0.045);
    });
  });

  it("shows every default interval within three points of 95% from 60 radiographs on", () => {
    methods.forEach((method, k) => {
      if (method.endsWith("1986")) return;
      for (const share of printed[k]!.slice(1)) expect(Math.abs(share - 0.95), method).toBeLessThan(0.03);
    });
  });
});
