import { InvalidArgumentError, type Command } from "commander";
import type { Subcommand } from "../command.js";
import { present } from "../output.js";
import { fraction } from "../parse-options.js";

interface ProportionOptions {
  readonly level: number;
  readonly next?: number;
  readonly json?: boolean;
}

export const command: Subcommand = {
  order: 10,
  add: (program: Command) => {
    program
      .command("proportion")
      .description("one count as a rate with its interval, by every method in use")
      .argument("<count>", "successes/trials")
      .option("--level <fraction>", "coverage of the intervals, between 0 and 1", fraction, 0.95)
      .option("--next <cases>", "also what the next so many cases could bring", cases)
      .option("--json", "print one JSON object")
      .addHelpText("after", "\nExample:\n  denominator proportion 21/23 --next 20")
      .action(async (text: string, { level, next, json }: ProportionOptions) => {
        const { readCount } = await import("../counts/read-count.js");
        const { analyseProportion } = await import("../counts/analyse-proportion.js");
        const { proportionText } = await import("../counts/proportion-text.js");
        const count = readCount("proportion", text);
        const analysis = analyseProportion(count, next === undefined ? { level } : { level, next });
        present(analysis, json === undefined ? {} : { json }, () => proportionText(analysis));
      });
  },
};

function cases(text: string): number {
  const value = /^\d+$/.test(text) ? Number(text) : NaN;
  if (!(value >= 1 && value <= 100_000)) throw new InvalidArgumentError("It must be a whole number from 1 to 100,000.");
  return value;
}
