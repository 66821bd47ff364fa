import { Command, CommanderError } from "commander";
import { afterEach, describe, expect, it, test, vi } from "vitest";
import { command } from "../../src/cli/commands/compare.js";
import { InputError } from "../../src/cli/input-error.js";
import { operandsFirst } from "../../src/cli/operands-first.js";

afterEach(() => {
  vi.restoreAllMocks();
});

/** What a call prints on standard output. */
async function compare(...args: string[]): Promise<string> {
  const program = new Command("denominator").exitOverride().configureOutput({ writeErr: () => {}, writeOut: () => {} });
  command.add(program);
  for (const sub of program.commands)
    sub.exitOverride().configureOutput({ writeErr: () => {}, writeOut: (text) => process.stdout.write(text) });
  let printed = "";
  vi.spyOn(process.stdout, "write").mockImplementation((text) => {
    printed += String(text);
    return true;
  });
  try {
    await program.parseAsync(operandsFirst(["compare", ...args]), { from: "user" });
  } finally {
    vi.restoreAllMocks();
  }
  return printed;
}

it("prints the fields of the contract and nothing else on standard output", async () => {
  const result = JSON.parse(await compare("35/40", "7/11", "--json")) as Record<string, unknown>;
  const limits = { low: expect.any(Number), high: expect.any(Number) };
  expect(result).toMatchObject({
    first: { successes: 35, trials: 40 },
    second: { successes: 7, trials: 11 },
    level: 0.95,
    difference: { estimate: expect.closeTo(0.875 - 7 / 11, 14), newcombe: limits, miettinenNurminen: limits },
    riskRatio: { estimate: expect.closeTo(1.375, 14), katz: limits, koopman: limits },
    oddsRatio: {
      sample: expect.closeTo(4, 14),
      woolf: limits,
      conditional: { estimate: expect.any(Number), exact: limits },
    },
    // 0.087 by R's fisher.test.
    fisher: {
      pointProbability: expect.closeTo(0.08684, 4),
      doubled: expect.closeTo(0.1738, 3),
      less: expect.any(Number),
    },
    chiSquare: { pearson: expect.any(Number), yates: expect.any(Number), nMinus1: expect.any(Number) },
    unconditional: { boschloo: expect.any(Number), barnard: expect.any(Number) },
    notes: [],
  });
});

it("says the difference first, then p with its convention, then the rest, in sentences", async () => {
  const lines = (await compare("35/40", "7/11")).trimEnd().split("\n");
  expect(lines[0]).toBe("First group 35 of 40 (88%), second group 7 of 11 (64%).");
  expect(lines[1]).toMatch(/^Difference, first minus second: 24 percentage points \(95% CI −1 to 53, Newcombe; /);
  expect(lines[2]).toMatch(
    /^Fisher's exact test, two-sided, summing the tables no likelier than the observed one: p = 0\.087\. Twice the smaller tail: p = 0\.17; /,
  );
  expect(lines[3]).toMatch(
    /^Chi-square: .*Boschloo p = 0\.093 \(ordered by Fisher's two-sided p: p = 0\.064\); Barnard p = 0\.10\.$/,
  );
  expect(lines[4]).toMatch(/^Risk ratio: 1\.4 /);
  expect(lines[5]).toMatch(/^Odds ratio: 4\.0 /);
  expect(lines[6]).toMatch(
    /the difference may be 0, so the data allow 1\.9 or more for one success more and 75\.3 or more/,
  );
  expect(lines).toHaveLength(7);
});

it("notes when Fisher's p and the exact limits disagree by convention", async () => {
  expect(await compare("16/31", "8/32")).toMatch(
    /Fisher's p and the exact limits of the odds ratio disagree: the p value sums/,
  );
  const { notes } = JSON.parse(await compare("16/31", "8/32", "--json")) as { notes: string[] };
  expect(notes).toHaveLength(1);
});

it("prints infinity as a word and what is undefined as null with its reason", async () => {
  const one = JSON.parse(await compare("10/10", "0/10", "--json"));
  expect(one).toMatchObject({
    riskRatio: {
      estimate: "Infinity",
      katz: { low: null, because: expect.any(String) },
      koopman: { high: "Infinity" },
    },
    oddsRatio: { sample: "Infinity", conditional: { estimate: "Infinity", exact: { high: "Infinity" } } },
  });
  const none = JSON.parse(await compare("0/10", "0/10", "--json"));
  expect(none).toMatchObject({
    riskRatio: { estimate: null, because: expect.any(String) },
    oddsRatio: {
      sample: null,
      because: expect.any(String),
      conditional: { estimate: null, because: expect.any(String) },
    },
    chiSquare: { pearson: null, yates: null, nMinus1: null, because: "every case was a failure" },
  });
  expect(await compare("0/10", "0/10")).toMatch(/Odds ratio: undefined, because both products of the odds ratio are 0/);
});

it("leaves out the unconditional tests beyond their reach, with the reason", async () => {
  expect(JSON.parse(await compare("189/11034", "104/11037", "--json"))).toMatchObject({
    unconditional: { boschloo: null, barnard: null, because: expect.stringContaining("at most 5000 trials") },
  });
  expect(await compare("189/11034", "104/11037")).toMatch(/Unconditional tests: none, because/);
});

it("adds exact limits of the difference when asked, as far as they are computed", async () => {
  // numpy, all tables and dense grids (exact-difference.json): 7 of 15 against 12 of 15.
  expect(JSON.parse(await compare("7/15", "12/15", "--exact", "--json"))).toMatchObject({
    difference: {
      exact: {
        chanZhang: { low: expect.closeTo(-0.636986, 5) as number, high: expect.closeTo(0.02386, 5) as number },
        agrestiMin: { low: expect.closeTo(-0.611676, 5) as number, high: expect.closeTo(0.02728, 5) as number },
      },
    },
  });
  expect(await compare("7/15", "12/15", "--exact")).toContain(
    "Exact unconditional limits of the difference: 95% CI \u221264 to 2, Chan-Zhang; \u221261 to 3, Agresti-Min.\n",
  );
  const because = "the exact limits are computed for at most 2000 trials of both groups together";
  expect(JSON.parse(await compare("900/2000", "800/2000", "--exact", "--json"))).toMatchObject({
    difference: { exact: { chanZhang: null, agrestiMin: null, because } },
  });
  expect(await compare("900/2000", "800/2000", "--exact")).toContain(`difference: none, because ${because}.\n`);
  expect(JSON.parse(await compare("7/15", "12/15", "--json"))).not.toHaveProperty("difference.exact");
});

it("takes a level", async () => {
  expect(await compare("35/40", "7/11", "--level", "0.9")).toMatch(/\(90% CI 2 to 49, Newcombe/);
});

describe("wrong input names the count and the rule", () => {
  test.each([
    ["24/23", "7/11", 'compare: first count: successes must not exceed trials, got "24/23"'],
    ["1/2", "-1/5", 'compare: second count: must be two whole numbers, successes/trials such as 21/23, got "-1/5"'],
    ["1.5/4", "7/11", 'compare: first count: must be two whole numbers, successes/trials such as 21/23, got "1.5/4"'],
    ["NaN", "7/11", 'compare: first count: must be two whole numbers, successes/trials such as 21/23, got "NaN"'],
    ["1/2", "0/0", 'compare: second count: trials must be a whole number from 1 to 9007199254740991, got "0/0"'],
    [
      "1/2",
      "1/9999999999999999",
      'compare: second count: trials must be a whole number from 1 to 9007199254740991, got "1/9999999999999999"',
    ],
  ])("%s %s", async (one, two, message) => {
    await expect(compare(one, two)).rejects.toEqual(new InputError(message));
  });
  test("one count only, or three, or a level of 95, is a wrong call", async () => {
    for (const args of [["35/40"], ["1/2", "1/2", "1/2"], ["1/2", "1/2", "--level", "95"]])
      await expect(compare(...args)).rejects.toThrow(CommanderError);
  });
});
