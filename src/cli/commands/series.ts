import { basename } from "node:path";
import type { Command } from "commander";
import type { Subcommand } from "../command.js";
import { present } from "../output.js";
import { fraction } from "../parse-options.js";
import { readInput } from "../read-input.js";

interface SeriesOptions {
  readonly mix?: string;
  readonly level: number;
  readonly json?: boolean;
}

export const command: Subcommand = {
  order: 50,
  add: (program: Command) => {
    program
      .command("series")
      .description("set published series beside each other: success by grade, crude, and with one common mix of grades")
      .argument(
        "<file>",
        "csv with the columns series, grade, successes, cases (technique too, if wanted); - for standard input",
      )
      .option("--mix <grades>", 'weights of the grades: "I 10, II 20"; by default the cases of all series together')
      .option("--level <fraction>", "coverage of the intervals, between 0 and 1", fraction, 0.95)
      .option("--json", "print one JSON object")
      .addHelpText(
        "after",
        '\nExample:\n  denominator series published.csv --mix "I 10, II 20, III 15, IV 5"\n\n' +
          'A count that a paper does not give is left empty or written as "not stated".',
      )
      .action(series);
  },
};

async function series(path: string, options: SeriesOptions): Promise<void> {
  const [{ readPublishedSeries }, { readMix }, { seriesRates }, { seriesText }] = await Promise.all([
    import("../../findings/series/read-published-series.js"),
    import("../series/read-mix.js"),
    import("../../stats/series/series-rates.js"),
    import("../series/series-text.js"),
  ]);
  const file = readPublishedSeries(await readInput(path), path === "-" ? "standard input" : basename(path));
  const grades = [...new Set(file.series.flatMap((one) => one.grades.map(({ grade }) => grade)))];
  const rates = seriesRates(file.series, {
    level: options.level,
    ...(options.mix !== undefined && { mix: readMix(options.mix, grades) }),
  });
  for (const remark of file.remarks) process.stderr.write(`${remark}\n`);
  present(rates, options, () => seriesText(rates));
}
