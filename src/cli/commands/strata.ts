import type { Command } from "commander";
import type { Subcommand } from "../command.js";
import { present } from "../output.js";
import { fraction } from "../parse-options.js";

interface StrataOptions {
  readonly level: number;
  readonly json?: boolean;
}

export const command: Subcommand = {
  order: 40,
  add: (program: Command) => {
    program
      .command("strata")
      .description(
        "compare two groups within strata, such as grades: adjusted and exact odds ratio, difference, homogeneity",
      )
      .argument("<rows>", "a row a stratum: success and failure of the first group, then of the second")
      .option("--level <fraction>", "coverage of the intervals, between 0 and 1", fraction, 0.95)
      .option("--json", "print one JSON object")
      .addHelpText(
        "after",
        '\nExample (grades II to IV, closed against open):\n  denominator strata "14 1 1 0; 10 1 2 2; 2 3 4 2"',
      )
      .action(async (text: string, options: StrataOptions) => {
        const { readRows } = await import("../counts/read-rows.js");
        const { analyseStrata } = await import("../counts/analyse-strata.js");
        const { strataText } = await import("../counts/strata-text.js");
        const analysis = analyseStrata(readRows("strata", text, 4), options.level);
        present(analysis, options, () => strataText(analysis));
      });
  },
};
