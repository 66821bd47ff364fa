import type { Command } from "commander";
import type { Subcommand } from "../command.js";
import { present } from "../output.js";
import { readInput } from "../read-input.js";

export const command: Subcommand = {
  order: 60,
  add: (program: Command) => {
    program
      .command("inspect")
      .description("read a case sheet: what is heading, case, note; which column is what; what must be asked")
      .argument("<sheet>", ".csv, .tsv, .xlsx or .ods file")
      .option("--sheet <name>", "sheet of a workbook; by default the visible one with the most filled cells")
      .option("--json", "print one JSON object")
      .addHelpText("after", "\nExample:\n  $ denominator inspect cases.xlsx\n")
      .action(inspect);
  },
};

async function inspect(path: string, options: { readonly sheet?: string; readonly json?: boolean }): Promise<void> {
  const [{ readSheet }, { readCases }, { inspection, inspectionText }] = await Promise.all([
    import("../../cases/read-sheet.js"),
    import("../../cases/read-cases.js"),
    import("../../cases/inspection.js"),
  ]);
  const table = readCases(
    await readSheet(await readInput(path), path, options.sheet === undefined ? {} : { sheet: options.sheet }),
  );
  present(inspection(table), options, () => inspectionText(table));
}
