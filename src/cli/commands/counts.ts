import type { Command } from "commander";
import type { Subcommand } from "../command.js";
import { present } from "../output.js";

interface CountsOptions {
  readonly plan?: string;
  readonly answers?: string;
  readonly name: string;
  readonly success?: string;
  readonly sql?: boolean;
  readonly table: string;
  readonly json?: boolean;
}

export const command: Subcommand = {
  order: 85,
  add: (program: Command) => {
    program
      .command("counts")
      .description("counts only (grade x technique x outcome), to compare centres without sharing patients")
      .argument("[sheet]", "csv, tsv, xlsx or ods file, one row a case; not needed with --sql")
      .option("--plan <file>", "the plan (JSON); without it one is drafted from the sheet")
      .option("--answers <file>", "answers to the questions about the sheet (JSON)")
      .option("--name <text>", "what the series is called in the file", "own series")
      .option("--success <kind>", "which success of the plan to count: technical, position or motion")
      .option("--sql", "print the statement of the plan for any SQL engine instead")
      .option("--table <name>", "table that the statement reads", "cases")
      .option("--json", "print one JSON object")
      .addHelpText(
        "after",
        "\nExample:\n  denominator counts data-demo/cohort.csv --plan data-demo/cohort-plan.json > counts.csv",
      )
      .action(async (sheet: string | undefined, options: CountsOptions) => {
        const { makeCounts, makeSql } = await import("../report/make-counts.js");
        if (options.sql === true) {
          const sql = await makeSql(options);
          present({ sql }, options, () => sql);
          return;
        }
        const { csv, ...counts } = await makeCounts(sheet, options);
        present(counts, options, () => csv);
      });
  },
};
