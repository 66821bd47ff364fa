import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { Command, CommanderError } from "commander";
import { afterAll, afterEach, beforeAll, describe, expect, it, vi } from "vitest";
import { command } from "../../src/cli/commands/agreement.js";
import { operandsFirst } from "../../src/cli/operands-first.js";
import { example } from "../stats/agreement/examples.js";

let folder = "";
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), "agreement-"));
});
afterAll(() => rmSync(folder, { recursive: true }));
afterEach(() => {
  vi.restoreAllMocks();
});

async function run(...args: string[]): Promise<string> {
  const program = new Command("denominator").exitOverride().configureOutput({ writeErr: () => {} });
  command.add(program);
  for (const sub of program.commands) sub.exitOverride().configureOutput({ writeErr: () => {} });
  let printed = "";
  vi.spyOn(process.stdout, "write").mockImplementation((text) => {
    printed += String(text);
    return true;
  });
  await program.parseAsync(operandsFirst(["agreement", ...args]), { from: "user" });
  vi.restoreAllMocks();
  return printed;
}
const json = async (...args: string[]) => JSON.parse(await run(...args, "--json")) as Record<string, unknown>;

function file(name: string, text: string): string {
  const path = join(folder, name);
  writeFileSync(path, text);
  return path;
}

const table = "12 4 0 0; 5 10 4 0; 0 4 9 3; 0 0 2 7";

describe("a table", () => {
  it("prints the fields of the contract", async () => {
    const result = await json("--table", table);
    // Unweighted, linear and quadratic with their errors by statsmodels 0.15.0, cohens_kappa.
    expect(result).toMatchObject({
      n: 60,
      agreement: { estimate: 38 / 60 },
      withinOne: { estimate: 1 },
      kappa: {
        unweighted: { estimate: expect.closeTo(0.5030120481927711, 12) },
        linear: { estimate: expect.closeTo(0.6816208393632417, 12) },
        quadratic: { estimate: expect.closeTo(0.8297213622291022, 12) },
      },
    });
    const kappa = result.kappa as Record<
      string,
      { estimate: number; standardError: number; interval: { low: number } }
    >;
    for (const one of Object.values(kappa))
      expect(one.interval.low).toBeCloseTo(one.estimate - 1.959963984540054 * one.standardError, 12);
  });

  it("says it in sentences", async () => {
    const text = await run("--table", table);
    expect(text).toContain(
      "The two raters gave the same grade to 38 of 60 radiographs (63%; 95% CI 51 to 74), and grades at most one apart to 60 of 60 radiographs (100%; 95% CI 94 to 100).",
    );
    expect(text).toContain("Kappa, linear weights: 0.68 (95% CI 0.56 to 0.80); standard error 0.060;");
  });

  it("takes weights of one's own: Cohen 1968, 200 patients, 0.348", async () => {
    const asked = ["--table", "88 14 18; 10 40 10; 2 6 12", "--weights", "0 1 3; 1 0 6; 3 6 0"];
    const { kappa } = await json(...asked);
    expect((kappa as Record<string, { estimate: number }>)["given"]!.estimate).toBeCloseTo(0.348, 3);
    expect(await run(...asked)).toContain("Kappa, weights as given: 0.35 (95% CI ");
    await expect(run("--table", "1 2; 3 4", "--weights", "0 x; 1 0")).rejects.toThrow(
      'agreement: weights, row 1, column 2: must be a number of at least 0, got "x"',
    );
    await expect(run("--table", "1 2; 3 4", "--weights", "0 1 2; 1 0 1; 2 1 0")).rejects.toThrow(
      "weights must be 2 by 2, like the table",
    );
  });

  it("gives null and a reason when one grade was used", async () => {
    const because = "chance agreement is 1: both raters used only one and the same grade";
    expect(await json("--table", "0 0; 0 5")).toMatchObject({ kappa: { linear: { estimate: null, because } } });
    expect(await run("--table", "0 0; 0 5")).toContain(`Kappa, linear weights: not estimable (${because}).`);
  });

  it("refuses what is no square table, by row and column", async () => {
    await expect(run("--table", "1 2 3; 4 5 6")).rejects.toThrow(
      "agreement: the table must be square, as both raters use the same grades; got 2 rows of 3 counts",
    );
    await expect(run("--table", "-1 2; 3 4")).rejects.toThrow(
      'agreement: row 1, column 1: a count must be a whole number of at least 0, got "-1"',
    );
    await expect(run("--table", "0 0; 0 0")).rejects.toThrow(
      "agreement: the table must count at least one radiograph, got only zeros",
    );
  });
});

describe("a file of readings", () => {
  it("prints pairs, Fleiss, AC1 and alpha of grades", async () => {
    const { input, at } = example("D-krippendorff2011-c");
    const coders = input.coders as (number | null)[][];
    const rows = coders[0]!.map((_, unit) => [unit + 1, ...coders.map((coder) => coder[unit] ?? "")].join(","));
    const result = await json(file("c.csv", `image,P,Q,R,S\n${rows.join("\n")}\n`));
    expect(result).toMatchObject({
      kind: "grades",
      grades: ["1", "2", "3", "4", "5"],
      alpha: {
        nominal: { estimate: expect.closeTo(at("nominal"), 12) },
        ordinal: { estimate: expect.closeTo(at("ordinal"), 12) },
        interval: { estimate: expect.closeTo(at("interval"), 12) },
      },
      fleiss: { images: 8 },
      ac1: { images: 12 },
    });
    const pairs = result.pairs as { raters: string[]; n: number; agreement: { estimate: number } }[];
    expect(pairs).toHaveLength(6);
    expect(pairs[0]).toMatchObject({ raters: ["P", "Q"], n: 9, agreement: { estimate: 8 / 9 } });
  });

  it("prints correlations of numbers, and limits of measurements", async () => {
    const { input, at } = example("D-shrout-fleiss1979");
    const rows = (input.ratings as number[][]).map((row) => row.join(","));
    expect(await json(file("sf.csv", `a,b,c,d\n${rows.join("\n")}\n`))).toMatchObject({
      kind: "grades",
      icc: {
        agreement: { estimate: expect.closeTo(at("icc21"), 12) },
        consistency: { estimate: expect.closeTo(at("icc31"), 12) },
      },
    });
    const flow = example("D-bland-altman1986");
    const [large, mini] = [flow.input.large as number[][], flow.input.mini as number[][]];
    const lines = large.map((row, i) => `${i + 1},${row[0]!},${mini[i]![0]!}`);
    const path = file("ba.csv", `case,large,mini\n${lines.join("\n")}\n`);
    const measured = await json(path);
    expect(measured).toMatchObject({ kind: "measurements", pairs: [{ raters: ["large", "mini"] }] });
    expect((measured.pairs as { limits: { bias: { estimate: number } } }[])[0]!.limits.bias.estimate).toBeCloseTo(
      flow.at("mean"),
      12,
    );
    expect(await run(path)).toContain("large and mini, 17 radiographs: mean difference −2.1 (95% CI −22.0 to 17.8)");
  });

  it("repeats with its seed and follows the level", async () => {
    const path = file("s.csv", "film,A,B\n1,I,I\n2,II,I\n3,III,III\n4,II,II\n5,IV,III\n");
    expect(await run(path, "--seed", "4")).toBe(await run(path, "--seed", "4"));
    expect(await run(path, "--level", "0.9")).toContain("90% CI");
  });

  it("names file, row, column and rule", async () => {
    const path = file("bad.csv", "film,A,B\n1,I,II\n2,x4,I\n3,II,II\n");
    await expect(run(path)).rejects.toThrow('bad.csv: row 3, column "A": a grade must be one of I to X or 1 to 10');
    await expect(run(join(folder, "none.csv"))).rejects.toThrow("none.csv: no such file");
  });
});

describe("a wrong call", () => {
  it.each([
    [[]],
    [["--table", "1 2; 3 4", "readings.csv"]],
    [["--table", "1 2; 3 4", "--level", "95"]],
    [["x.csv", "--as", "angles"]],
  ])("%j is refused before anything is read", async (args) => {
    await expect(run(...args)).rejects.toBeInstanceOf(CommanderError);
  });
});
