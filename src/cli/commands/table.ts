import { InvalidArgumentError, type Command } from "commander";
import type { Subcommand } from "../command.js";
import { present } from "../output.js";

interface TableOptions {
  readonly seed: number;
  readonly randomTables?: number;
  readonly json?: boolean;
}

export const command: Subcommand = {
  order: 30,
  add: (program: Command) => {
    program
      .command("table")
      .description(
        "test a table of counts, exactly where that is quick; with two columns also for a trend over the rows",
      )
      .argument("<rows>", 'rows of counts parted by semicolons: "9 0; 15 1; 12 3; 6 5"')
      .option("--seed <number>", "seed of the random tables, should the exact test be too large", wholeNumber, 1)
      .option(
        "--random-tables <number>",
        "how many of them to draw (default: 100000, fewer for a table of more than 100 cells)",
        atLeastOne,
      )
      .option("--json", "print one JSON object")
      .addHelpText(
        "after",
        '\nExample (grades I to IV, success and failure):\n  denominator table "9 0; 15 1; 12 3; 6 5"',
      )
      .action(async (text: string, options: TableOptions) => {
        const { readRows } = await import("../counts/read-rows.js");
        const { analyseTable } = await import("../counts/analyse-table.js");
        const { tableText } = await import("../counts/table-text.js");
        const analysis = analyseTable(
          readRows("table", text),
          {
            seed: options.seed,
            ...(options.randomTables !== undefined && { simulated: options.randomTables }),
          },
          () => process.stderr.write("table: trying the exact test on a large table, which may take some seconds\n"),
        );
        present(analysis, options, () => tableText(analysis));
      });
  },
};

function wholeNumber(text: string): number {
  const value = /^\d+$/.test(text) ? Number(text) : NaN;
  if (!(value <= 10_000_000)) throw new InvalidArgumentError("It must be a whole number up to 10,000,000.");
  return value;
}

function atLeastOne(text: string): number {
  const value = wholeNumber(text);
  if (value === 0) throw new InvalidArgumentError("It must be at least 1.");
  return value;
}
