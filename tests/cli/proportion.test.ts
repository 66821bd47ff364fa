import { Command } from "commander";
import { afterEach, expect, it, test, vi } from "vitest";
import { command } from "../../src/cli/commands/proportion.js";
import { InputError } from "../../src/cli/input-error.js";
import { operandsFirst } from "../../src/cli/operands-first.js";

afterEach(() => {
  vi.restoreAllMocks();
});

/** What a call prints on standard output. */
async function run(...args: string[]): Promise<string> {
  const program = new Command("denominator").exitOverride();
  command.add(program);
  for (const sub of program.commands) sub.exitOverride().configureOutput({ writeErr: () => {} });
  let printed = "";
  vi.spyOn(process.stdout, "write").mockImplementation((text) => {
    printed += String(text);
    return true;
  });
  await program.parseAsync(operandsFirst(["proportion", ...args]), { from: "user" });
  return printed;
}

interface Printed {
  readonly successes: number;
  readonly trials: number;
  readonly estimate: number;
  readonly level: number;
  readonly intervals: Record<string, { readonly low: number; readonly high: number }>;
  readonly oneSided: { readonly lower: number; readonly upper: number };
  readonly next?: { readonly interval: unknown; readonly probabilities: readonly number[] };
}
const json = async (...args: string[]): Promise<Printed> => JSON.parse(await run(...args, "--json")) as Printed;

it("prints the fields of the contract, unrounded", async () => {
  const result = await json("81/263");
  expect(result).toMatchObject({ successes: 81, trials: 263, estimate: 81 / 263, level: 0.95 });
  // Newcombe 1998, Stat Med 17:857-872, Table I
  const printed = {
    wald: [0.2522, 0.3638],
    wilson: [0.2553, 0.3662],
    wilsonContinuity: [0.2535, 0.3682],
    clopperPearson: [0.2527, 0.3676],
    midP: [0.2544, 0.3658],
  };
  for (const [method, [low, high]] of Object.entries(printed)) {
    expect(result.intervals[method]!.low).toBeCloseTo(low!, 4);
    expect(result.intervals[method]!.high).toBeCloseTo(high!, 4);
  }
  expect(Object.keys(result.intervals)).toEqual(expect.arrayContaining(["agrestiCoull", "jeffreys"]));
});

it("ends exactly at 0 and 1", async () => {
  const none = await json("0/30");
  expect(none.intervals.wilson!.low).toBe(0);
  expect(none.oneSided.lower).toBe(0);
  // 1 - 0.05^(1/30): Hanley and Lippman-Hand 1983, JAMA 249:1743-1745, print 10%
  expect(none.oneSided.upper).toBeCloseTo(0.0950338528553041, 13);
  expect((await json(" 30 / 30 ")).intervals.clopperPearson!.high).toBe(1);
});

it("uses the level asked for", async () => {
  const result = await json("4/20", "--level", "0.9");
  expect(result.level).toBe(0.9);
  // 40-digit value; the NIST handbook prints 0.071354
  expect(result.intervals.clopperPearson!.low).toBeCloseTo(0.0713538843086182, 12);
});

it("adds what the next cases could bring", async () => {
  expect((await json("6/11")).next).toBeUndefined();
  const { next } = await json("6/11", "--next", "20");
  expect(next!.probabilities).toHaveLength(21);
  expect(next!.interval).toEqual({ low: 4, high: 17 });
});

// Limits and predictive chances checked with scipy (beta.ppf, brentq on the defining equations, betabinom).
it("prints a sentence for a paper, then the other methods", async () => {
  expect(await run("21/23", "--next", "20")).toBe(`21 of 23 (91%; 95% CI 73 to 98; Wilson score interval).

By other methods, 95% CI in per cent:
  70 to 98        Wilson with continuity correction
  72 to 99        exact (Clopper-Pearson)
  74 to 99        exact, mid-p
  73 to 98        exact (Blaker)
  75 to 98        Jeffreys
  72 to 99        Agresti-Coull
  75 to 98        likelihood ratio
  80 to 103       Wald (poor near 0 and 100%; to recognise a printed one)
  78 to 105       Wald with continuity correction (likewise)

One-sided: at least 75%, or at most 98% (each alone with 95% confidence, exact).
Of the next 20 like them, 17.9 successes are expected, 14 to 20 with 95% probability (beta-binomial, Jeffreys prior).
`);
  expect(await run("0/18")).toContain("One-sided: at most 15% (95% confidence, exact).");
  expect(await run("18/18")).toContain("One-sided: at least 85% (95% confidence, exact).");
});

test.each([
  ["24/23", 'proportion: successes must not exceed trials, got "24/23"'],
  ["-1/5", 'proportion: must be two whole numbers, successes/trials such as 21/23, got "-1/5"'],
  ["1.5/4", 'proportion: must be two whole numbers, successes/trials such as 21/23, got "1.5/4"'],
  ["NaN", 'proportion: must be two whole numbers, successes/trials such as 21/23, got "NaN"'],
  ["abc", 'proportion: must be two whole numbers, successes/trials such as 21/23, got "abc"'],
  ["1/2/3", 'proportion: must be two whole numbers, successes/trials such as 21/23, got "1/2/3"'],
  ["0/0", 'proportion: trials must be a whole number from 1 to 9007199254740991, got "0/0"'],
])("%s is wrong input: %s", async (text, message) => {
  await expect(run(text, "--json")).rejects.toThrow(new InputError(message));
});

test.each([["--level", "95"], ["--level", "x"], ["--next", "0"], ["--nxt", "3"], ["7/8"]])(
  "a wrong call is told apart from wrong input: %s %s",
  async (...more) => {
    await expect(run("21/23", ...more)).rejects.toMatchObject({ name: "CommanderError" });
  },
);
