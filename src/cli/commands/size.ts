import { InvalidArgumentError, type Command } from "commander";
import type { Subcommand } from "../command.js";
import { present } from "../output.js";
import { fraction } from "../parse-options.js";
import type { SizePlan } from "../size/analyse-size.js";
import { sizeKinds, type SizeKind } from "../size/size-kinds.js";

interface SizeOptions extends SizePlan {
  readonly json?: boolean;
}

export const command: Subcommand = {
  order: 55,
  add: (program: Command) => {
    program
      .command("size")
      .description("how many cases, or radiographs and observers, the next study needs")
      .argument(
        "<what>",
        "rate: cases for an interval of a success rate; free: cases without a failure that exclude a failure rate; kappa or icc: radiographs for an interval of agreement",
        kind,
      )
      .argument("<value>", "the rate, kappa or correlation that is expected; for free the failure rate to exclude")
      .option("--width <fraction>", "wanted full width of the interval", fraction, 0.2)
      .option("--raters <n>", "observers who each read every radiograph", whole, 2)
      .option(
        "--shares <list>",
        "how common the grades are, as weights from the first to the last",
        weights,
        [1, 1, 1, 1],
      )
      .option("--simulate", "try the plan for kappa on 1,000 simulated studies")
      .option("--seed <n>", "seed of the simulated studies", whole, 1)
      .option("--level <fraction>", "coverage of the interval, between 0 and 1", fraction, 0.95)
      .option("--json", "print one JSON object")
      .addHelpText(
        "after",
        '\nExamples:\n  denominator size rate 0.85 --width 0.2\n  denominator size free 0.05\n  denominator size kappa 0.6 --raters 3 --shares "9 16 15 11" --width 0.2 --simulate\n  denominator size icc 0.8 --raters 2 --width 0.2',
      )
      .action(async (what: SizeKind, value: string, options: SizeOptions) => {
        const { analyseSize } = await import("../size/analyse-size.js");
        const { result, text } = analyseSize(what, value, options);
        present(result, options, () => text);
      });
  },
};

function kind(text: string): SizeKind {
  const known = sizeKinds.find((one) => one === text.trim());
  if (known === undefined) throw new InvalidArgumentError(`It must be one of ${sizeKinds.join(", ")}.`);
  return known;
}

function whole(text: string): number {
  const value = /^\s*\d+\s*$/.test(text) ? Number(text) : NaN;
  if (!(value < 2 ** 32)) throw new InvalidArgumentError("It must be a whole number.");
  return value;
}

function weights(text: string): number[] {
  const values = text
    .trim()
    .split(/[\s,;]+/)
    .map(Number);
  if (values.length < 2 || !values.every((value) => Number.isFinite(value) && value > 0))
    throw new InvalidArgumentError("It must hold two or more numbers above 0.");
  return values;
}
