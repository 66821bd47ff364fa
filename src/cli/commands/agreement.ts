import { InvalidArgumentError, type Command } from "commander";
import type { Subcommand } from "../command.js";
import { present } from "../output.js";

interface AgreementOptions {
  readonly table?: string;
  readonly as?: "grades" | "measurements";
  readonly grades?: string;
  readonly weights?: string;
  readonly level: number;
  readonly resamples: number;
  readonly seed: number;
  readonly json?: boolean;
}

export const command: Subcommand = {
  order: 50,
  add: (program: Command) => {
    const sub = program
      .command("agreement")
      .description("would another observer grade it the same? Two raters' table of counts, or a file of readings")
      .argument("[readings]", "one row a radiograph, one column a rater (csv, tsv, xlsx, ods; - for standard input)")
      .option("--table <rows>", "counts, a row a grade of the first rater, a column a grade of the second")
      .option("--weights <rows>", "with --table: how much each two grades disagree, 0 for the same, one more kappa")
      .option("--as <kind>", "what the cells hold, when it cannot be told: grades or measurements", kind)
      .option("--grades <list>", 'the scale from lowest to highest, such as "mild, moderate, severe"')
      .option("--level <fraction>", "coverage of the intervals, between 0 and 1", fraction, 0.95)
      .option("--resamples <n>", "resamples for the bootstrap limits, at least 100", whole(100), 2000)
      .option("--seed <n>", "seed of the resamples", whole(0), 1)
      .option("--json", "print one JSON object")
      .addHelpText(
        "after",
        '\nExamples (two observers, grades I to IV; a file with a column a rater):\n  denominator agreement --table "12 4 0 0; 5 10 4 0; 0 4 9 3; 0 0 2 7"\n  denominator agreement readings.csv --json',
      )
      .action(async (file: string | undefined, options: AgreementOptions) => {
        if ((file === undefined) === (options.table === undefined))
          sub.error("error: give either a file of readings or --table, one of the two");
        if (options.weights !== undefined && options.table === undefined)
          sub.error("error: --weights belongs to --table");
        if (options.table !== undefined) {
          const { analyseTable } = await import("../agreement/analyse-table.js");
          const { result, text } = analyseTable(options.table, options);
          present(result, options, () => text);
          return;
        }
        const { readInput } = await import("../read-input.js");
        const { analyseReadings } = await import("../agreement/analyse-readings.js");
        const bytes = await readInput(file!);
        const { result, text } = await analyseReadings(bytes, file === "-" ? "standard input" : file!, options);
        present(result, options, () => text);
      });
  },
};

function fraction(text: string): number {
  const value = text.trim() === "" ? NaN : Number(text);
  if (!(value > 0 && value < 1)) throw new InvalidArgumentError("It must be a fraction between 0 and 1.");
  return value;
}

function whole(least: number): (text: string) => number {
  return (text) => {
    const value = /^\s*\d+\s*$/.test(text) ? Number(text) : NaN;
    if (!(value >= least && value < 2 ** 32))
      throw new InvalidArgumentError(`It must be a whole number of at least ${least}.`);
    return value;
  };
}

function kind(text: string): string {
  if (text !== "grades" && text !== "measurements")
    throw new InvalidArgumentError("It must be grades or measurements.");
  return text;
}
