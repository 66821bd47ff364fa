import type { Command } from "commander";
import type { Subcommand } from "../command.js";
import { present } from "../output.js";

interface ReportOptions {
  readonly plan?: string;
  readonly answers?: string;
  readonly out: string;
  readonly level?: string;
  readonly success?: string;
  readonly sheet?: string;
  readonly before?: string;
  readonly json?: boolean;
}

export const command: Subcommand = {
  order: 80,
  add: (program: Command) => {
    program
      .command("report")
      .description("turn a case sheet into a success rate by grade: findings, page, figures and tables")
      .argument("<sheet>", "csv, tsv, xlsx or ods file, one row a case")
      .requiredOption("--out <folder>", "folder to write to")
      .option(
        "--plan <file>",
        "what was decided before looking (JSON); without it one is drafted and written with the rest",
      )
      .option("--answers <file>", "answers to the questions about the sheet (JSON)")
      .option(
        "--before <file>",
        "earlier version of the sheet: says what changed since, and which printed numbers moved",
      )
      .option("--level <fraction>", "coverage of all intervals, between 0 and 1", "0.95")
      .option("--success <kind>", "which success of the plan to count: technical, position or motion")
      .option("--sheet <name>", "sheet of a workbook")
      .option("--json", "print one JSON object: the findings and the files written")
      .addHelpText(
        "after",
        "\nExample:\n  denominator report data-demo/cohort.csv --plan data-demo/cohort-plan.json --out out/",
      )
      .action(async (sheet: string, options: ReportOptions) => {
        const { makeReport } = await import("../report/make-report.js");
        const { writeWhole } = await import("../write-whole.js");
        const { versionLines } = await import("../../report/version-lines.js");
        const { files, findings, assumptions, summary, changes } = await makeReport(sheet, options);
        await writeWhole(options.out, files);
        for (const assumption of assumptions) process.stderr.write(`taken for granted: ${assumption}\n`);
        for (const { heading, lines } of changes ? versionLines(changes) : [])
          process.stderr.write(`${[heading, ...lines.map((line) => `  ${line}`)].join("\n")}\n`);
        const written = [...files.keys()].map((path) => `${options.out.replace(/[/\\]$/, "")}/${path}`);
        present(
          { out: options.out, files: written, assumptions, findings },
          options,
          () => `${summary}\n\nWritten: ${written.join(", ")}`,
        );
      });
  },
};
