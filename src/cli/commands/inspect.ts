import { basename } from "node:path";
import type { Command } from "commander";
import type { Subcommand } from "../command.js";
import { present } from "../output.js";
import { progress } from "../progress.js";
import { readInput } from "../read-input.js";

export const command: Subcommand = {
  order: 60,
  add: (program: Command) => {
    program
      .command("inspect")
      .description("read a case sheet: what is heading, case, note; which column is what; what must be asked")
      .argument("<sheet>", ".csv, .tsv, .xlsx or .ods file")
      .option("--sheet <name>", "sheet of a workbook; by default the fullest visible one with a heading of cases")
      .option("--answers <file>", "JSON file of answers: question id to choice")
      .option("--json", "print one JSON object")
      .addHelpText("after", "\nExample:\n  $ denominator inspect cases.xlsx\n")
      .action(inspect);
  },
};

async function inspect(path: string, options: InspectOptions): Promise<void> {
  const say = progress("inspect");
  const [{ readSheet }, { readCases }, { readAnswers }, { inspection, inspectionText }] = await Promise.all([
    import("../../cases/read-sheet.js"),
    import("../../cases/read-cases.js"),
    import("../../cases/read-answers.js"),
    import("../../cases/inspection.js"),
  ]);
  const sheet = await readSheet(
    await readInput(path),
    path,
    options.sheet === undefined ? {} : { sheet: options.sheet },
  );
  say(`${sheet.rows.length} rows found`);
  const answers =
    options.answers === undefined
      ? {}
      : readAnswers(new TextDecoder().decode(await readInput(options.answers)), basename(options.answers));
  const onProgress = (share: number): void => say(`${Math.round(share * 100)}% understood`);
  const table = readCases(sheet, { answers, onProgress });
  present(inspection(table), options, () => inspectionText(table));
}

interface InspectOptions {
  readonly sheet?: string;
  readonly answers?: string;
  readonly json?: boolean;
}
