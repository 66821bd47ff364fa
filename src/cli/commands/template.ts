import { access } from "node:fs/promises";
import { basename, dirname } from "node:path";
import type { Command } from "commander";
import type { Subcommand } from "../command.js";
import { InputError } from "../input-error.js";
import { present } from "../output.js";
import { writeWhole } from "../write-whole.js";

export const command: Subcommand = {
  order: 62,
  add: (program: Command) => {
    program
      .command("template")
      .description("write an empty case sheet for the next series, with lists of entries")
      .requiredOption("--out <file>", ".xlsx file to write; an existing file is not replaced")
      .option("--json", "print one JSON object")
      .addHelpText("after", "\nExample:\n  $ denominator template --out next-series.xlsx\n")
      .action(template);
  },
};

async function template({ out, json = false }: { readonly out: string; readonly json?: boolean }): Promise<void> {
  if (!/\.xlsx$/i.test(out))
    throw new InputError(`${basename(out)}: the template is a workbook, its name must end in .xlsx`);
  if (await exists(out))
    throw new InputError(`${basename(out)}: exists already and is not replaced; choose another name`);
  const { templateSheet } = await import("../../cases/template-sheet.js");
  await writeWhole(dirname(out), new Map([[basename(out), await templateSheet()]]));
  present({ file: out }, { json }, () => `Wrote ${out}: one row a limb, entries checked while typing.`);
}

async function exists(path: string): Promise<boolean> {
  return access(path).then(
    () => true,
    () => false,
  );
}
