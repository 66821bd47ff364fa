import type { Command } from "commander";

/** One subcommand. Its file loads nothing heavy: statistics and readers are imported inside the action. */
export interface Subcommand {
  /** Place in the help, small first. */
  readonly order: number;
  readonly add: (program: Command) => void;
}
