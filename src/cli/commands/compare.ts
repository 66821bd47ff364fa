import type { Command } from "commander";
import type { Subcommand } from "../command.js";
import { present } from "../output.js";
import { fraction } from "../parse-options.js";

interface CompareOptions {
  readonly level: number;
  readonly exact?: boolean;
  readonly json?: boolean;
}

export const command: Subcommand = {
  order: 20,
  add: (program: Command) => {
    program
      .command("compare")
      .description("compare two independent counts, first minus second: difference, ratios, exact and asymptotic tests")
      .argument("<first>", "successes/trials of the first group")
      .argument("<second>", "successes/trials of the second group")
      .option("--level <fraction>", "coverage of the intervals, between 0 and 1", fraction, 0.95)
      .option("--exact", "also exact unconditional limits of the difference")
      .option("--json", "print one JSON object")
      .addHelpText("after", "\nExample (closed against open reduction):\n  denominator compare 35/40 7/11")
      .action(async (one: string, two: string, options: CompareOptions) => {
        const { readCount } = await import("../counts/read-count.js");
        const { analyseComparison } = await import("../counts/analyse-comparison.js");
        const { comparisonText } = await import("../counts/comparison-text.js");
        const groups = {
          first: readCount("compare: first count", one),
          second: readCount("compare: second count", two),
        };
        const analysis = analyseComparison(groups, options.level, { exact: options.exact ?? false });
        present(analysis, options, () => comparisonText(analysis));
      });
  },
};
