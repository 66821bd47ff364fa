import { Command } from "commander";
import { afterEach, expect, it, vi } from "vitest";
import { command as strata } from "../../src/cli/commands/strata.js";
import { command as table } from "../../src/cli/commands/table.js";
import { operandsFirst } from "../../src/cli/operands-first.js";
import { r } from "../r.js";

afterEach(() => {
  vi.restoreAllMocks();
});

/** What a call prints on standard output. */
async function run(...args: string[]): Promise<string> {
  const program = new Command("denominator").exitOverride().configureOutput({ writeErr: () => {} });
  table.add(program);
  strata.add(program);
  for (const sub of program.commands) sub.exitOverride().configureOutput({ writeErr: () => {} });
  let printed = "";
  vi.spyOn(process.stdout, "write").mockImplementation((text) => {
    printed += String(text);
    return true;
  });
  await program.parseAsync(operandsFirst(args), { from: "user" });
  vi.restoreAllMocks();
  return printed;
}

const json = async (...args: string[]): Promise<Record<string, Record<string, unknown>>> =>
  JSON.parse(await run(...args, "--json")) as Record<string, Record<string, unknown>>;

it("table: prints the fields of the contract and nothing else on standard output", async () => {
  const result = await json("table", "9 0; 15 1; 12 3; 6 5");
  expect(result.fisherFreemanHalton).toMatchObject({ method: "exact Fisher-Freeman-Halton (network)" });
  expect(result.fisherFreemanHalton!.p).toBeCloseTo(0.0298329568, 9);
  expect(result.chiSquare).toMatchObject({ df: 3 });
  const trend = result.trend as Record<string, Record<string, number>>;
  // 0.0032 by distance, 0.0049 doubled, 0.0036 in large samples, computed in R 4.2.2.
  expect(trend.exact!.pointProbability).toBeCloseTo(0.0032, 4);
  expect(trend.exact!.doubled).toBeCloseTo(0.0049, 4);
  expect(trend.asymptotic!.p).toBeCloseTo(0.0036, 4);
  expect(trend.asymptotic!.z).toBeLessThan(0);
});

it("table: has no trend unless there are two columns, and empty rows keep their score", async () => {
  expect(await json("table", "1 2 3; 3 2 1")).not.toHaveProperty("trend");
  const gap = (await json("table", "3 7; 0 0; 9 1")).trend as Record<string, Record<string, number>>;
  const whole = (await json("table", "3 7; 9 1")).trend as Record<string, Record<string, number>>;
  expect(gap).toMatchObject({ scores: [1, 2, 3] });
  expect(gap.asymptotic!.z).toBeGreaterThan(0);
  expect(gap.asymptotic!.z).toBeCloseTo(whole.asymptotic!.z!, 12);
  expect((await json("table", "3 7; 0 0; 9 1")).chiSquare).toMatchObject({ df: 1 });
});

it("table: says where a large table's p comes from", async () => {
  const result = await json("table", "40 30 20 35 28; 30 28 35 29 31; 22 41 30 28 25; 35 33 29 24 30; 28 27 33 36 24");
  expect(result.fisherFreemanHalton).toMatchObject({
    method: "Monte Carlo Fisher-Freeman-Halton",
    simulated: 100000,
    seed: 1,
    level: 0.99,
  });
  const text = await run("table", "--seed", "7", "40 30 20 35 28; 30 28 35 29 31; 22 41 30 28 25; 35 33 29 24 30");
  expect(text).toMatch(
    /estimated from 100000 random tables \(seed 7\); the exact p lies between 0\.\d{5} and 0\.\d{5}/,
  );
});

it("table: waits for the exact test of a table that takes longer, and says so on standard error", async () => {
  const rows = "10 12 11 9 13; 9 14 12 11 8; 12 9 10 14 12; 11 13 9 10 12";
  let said = "";
  vi.spyOn(process.stderr, "write").mockImplementation((text) => {
    said += String(text);
    return true;
  });
  const result = await json("table", rows);
  expect(said).toBe("table: trying the exact test on a large table, which may take some seconds\n");
  expect(result.fisherFreemanHalton).toMatchObject({ method: "exact Fisher-Freeman-Halton (network)" });
  // R draws random tables here: five of its standard errors are allowed.
  const counts = `matrix(c(${rows.replaceAll(/[; ]+/g, ",")}), 4, byrow = TRUE)`;
  const [drawn] = await r(`set.seed(3); fisher.test(${counts}, simulate.p.value = TRUE, B = 1e5)$p.value`);
  const p = result.fisherFreemanHalton!.p as number;
  expect(Math.abs(p - drawn!)).toBeLessThan(5 * Math.sqrt((p * (1 - p)) / 1e5));
});

it("table: draws as many random tables as asked for, and refuses to draw none", async () => {
  const rows = "40 30 20 35 28; 30 28 35 29 31; 22 41 30 28 25; 35 33 29 24 30; 28 27 33 36 24";
  expect((await json("table", rows, "--random-tables", "500")).fisherFreemanHalton).toMatchObject({ simulated: 500 });
  await expect(run("table", rows, "--random-tables", "0")).rejects.toMatchObject({ code: "commander.invalidArgument" });
});

it("table: answers people in sentences", async () => {
  expect(await run("table", "9 0; 15 1; 12 3; 6 5")).toBe(
    [
      "4 rows by 2 columns, 51 cases.",
      "Fisher-Freeman-Halton test: p = 0.030 (exact).",
      "Chi-square test: 9.27 on 3 degrees of freedom, p = 0.026, but the smallest expected count is 1.6.",
      "Exact trend over the row numbers: p = 0.003 adding up the results that are no likelier, p = 0.005 doubling the smaller tail.",
      "Large-sample trend: z \u22122.91, p = 0.004; the first column's share falls from row to row.",
      "",
    ].join("\n"),
  );
});

it("table: gives null with its reason where the data leave a statistic undefined", async () => {
  expect(await json("table", "5 0; 7 0")).toMatchObject({
    fisherFreemanHalton: { p: 1 },
    chiSquare: { statistic: null, p: null, because: "all cases are in one column" },
    trend: {
      exact: { pointProbability: 1, doubled: 1 },
      asymptotic: { z: null, p: null, because: "all cases had the same outcome" },
    },
  });
});

it("strata: prints the fields of the contract", async () => {
  const result = await json("strata", "14 1 1 0; 10 1 2 2; 2 3 4 2");
  expect(Object.keys(result)).toEqual(["strata", "level", "mantelHaenszel", "exactCommon", "homogeneity"]);
  expect(result.mantelHaenszel).toHaveProperty("oddsRatio");
  for (const field of ["interval", "difference", "differenceInterval", "p"])
    expect(result.mantelHaenszel).toHaveProperty(field);
  for (const field of ["oddsRatio", "interval", "p"]) expect(result.exactCommon).toHaveProperty(field);
  // Grade I without an open case changes nothing.
  const withGradeI = await json("strata", "9 0 0 0; 14 1 1 0; 10 1 2 2; 2 3 4 2");
  for (const part of ["mantelHaenszel", "exactCommon", "homogeneity"] as const)
    expect(withGradeI[part]).toEqual(result[part]);
});

it("strata: writes infinity as text and leaves its limits null with a reason", async () => {
  const result = await json("strata", "5 0 2 3; 4 0 3 1");
  expect(result.mantelHaenszel).toMatchObject({
    oddsRatio: "Infinity",
    interval: { low: null, high: null, because: "an odds ratio of infinity has no Robins-Breslow-Greenland limits" },
  });
  expect(result.exactCommon).toMatchObject({ oddsRatio: "Infinity", interval: { high: "Infinity" } });
  expect(result.homogeneity).toMatchObject({ breslowDay: null, tarone: null });
  expect(result.homogeneity!.because).toMatch(/infinite/);
});

it("strata: answers people in sentences", async () => {
  expect(await run("strata", "14 1 1 0; 10 1 2 2; 2 3 4 2")).toBe(
    [
      "3 strata; the first group against the second, within strata.",
      "Mantel-Haenszel odds ratio: 1.3 (95% CI 0.27 to 6.6).",
      "Mantel-Haenszel difference: 6 percentage points (95% CI \u221230 to 43, by Sato's variance).",
      "Cochran-Mantel-Haenszel test: p = 0.72, no continuity correction.",
      "Exact common odds ratio: 1.4 (95% CI 0.16 to 9.7), p > 0.99.",
      "Same odds ratio in every stratum? Breslow-Day p = 0.17, with Tarone's correction p = 0.17; exact p = 0.21.",
      "",
    ].join("\n"),
  );
});

it.each([
  ["", "there must be at least one row of counts, got an empty text"],
  ["1 2; 3", "row 2: must have 2 counts as row 1 has, got 1"],
  ["1 2; 3 -4", 'row 2, column 2: a count must be a whole number of at least 0, got "-4"'],
  ["-1 2", 'row 1, column 1: a count must be a whole number of at least 0, got "-1"'],
  ["1.5 2", 'row 1, column 1: a count must be a whole number of at least 0, got "1.5"'],
  ["one 2", 'row 1, column 1: a count must be a whole number of at least 0, got "one"'],
  ["1 2;;3 4", "row 2: must hold counts, got nothing"],
  ["0 0; 0 0", "there must be at least one case, got 0 in every cell"],
])('table: refuses "%s" as wrong input', async (text, message) => {
  await expect(run("table", text)).rejects.toMatchObject({ name: "InputError", message: `table: ${message}` });
});

it("strata: wants four counts a stratum", async () => {
  await expect(run("strata", "1 2 3; 1 2 3")).rejects.toMatchObject({
    name: "InputError",
    message: "strata: row 1: must have 4 counts, got 3",
  });
});

it("a wrong option is a wrong call, not wrong input", async () => {
  await expect(run("strata", "--level", "95", "1 2 3 4")).rejects.toMatchObject({ code: "commander.invalidArgument" });
  await expect(run("table", "--seed", "x", "1 2; 3 4")).rejects.toMatchObject({ code: "commander.invalidArgument" });
});
