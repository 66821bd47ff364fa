import type { Command } from "commander";
import type { Subcommand } from "../command.js";
import { present } from "../output.js";
import { readInput } from "../read-input.js";

export const command: Subcommand = {
  order: 90,
  add: (program: Command) => {
    program
      .command("check")
      .description(
        "check the numbers of a pasted abstract or results section: which hold, by which method, what to ask",
      )
      .argument("<file>", 'text file, or "-" for standard input')
      .option("--style", "add remarks on wording: causal verbs, trend, significant without an interval; no verdict")
      .option("--json", "print one JSON object")
      .addHelpText(
        "after",
        '\nExample:\n  $ echo "Reduction held in 31 of 37 fractures (86%)." | denominator check -\n',
      )
      .action(check);
  },
};

async function check(path: string, options: { readonly json?: boolean; readonly style?: boolean }): Promise<void> {
  const [{ checkText }, { checkTable }, { decodeText }] = await Promise.all([
    import("../../claims/check-text.js"),
    import("../check-table.js"),
    import("../decode-text.js"),
  ]);
  const text = decodeText(await readInput(path), path);
  const checked = checkText(text, { style: options.style ?? false });
  present(checked, options, () => checkTable(checked));
}
