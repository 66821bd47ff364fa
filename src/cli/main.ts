import { Command, CommanderError } from "commander";
import { version } from "../../package.json";
import type { Subcommand } from "./command.js";
import { operandsFirst } from "./operands-first.js";

const modules = import.meta.glob<{ command: Subcommand }>("./commands/*.ts", { eager: true });

const program = new Command("denominator")
  .description("Research statistics for surgeons who treat graded injuries. Nothing leaves the computer.")
  .version(version)
  .exitOverride()
  .showHelpAfterError()
  .configureHelp({ helpWidth: 100 });

for (const { command } of Object.values(modules).toSorted((a, b) => a.command.order - b.command.order))
  command.add(program);

// `denominator inspect sheet.csv | head`: a reader that has seen enough is no fault.
process.stdout.on("error", ({ code, message }: NodeJS.ErrnoException) => {
  if (code !== "EPIPE") throw new Error(message);
  process.exit();
});

try {
  await program.parseAsync(operandsFirst(process.argv.slice(2)), { from: "user" });
} catch (error) {
  process.exitCode = report(error);
}

/** 0 after help, 2 when the call is wrong, 1 when the input is. */
function report(error: unknown): number {
  if (error instanceof CommanderError) return error.exitCode === 0 ? 0 : 2;
  process.stderr.write(`${error instanceof Error ? error.message : String(error)}\n`);
  return 1;
}
