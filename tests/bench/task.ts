/**
 * One thing that is timed. A group of tasks is one file in tests/bench/tasks/ that exports `tasks: readonly BenchTask[]`;
 * run.mjs finds it by its place, nothing to register. `npm run bench -- fisher` runs the tasks whose name holds "fisher".
 */
export interface BenchTask {
  /** What is computed and how large: "Fisher 2x2, total 200". */
  readonly name: string;
  /** One call, data made outside of it. The number is compared with R's, so that both are known to do the same work. */
  readonly ours: () => number;
  /** R (base packages) for one call, giving the same number; left out where base R has nothing to compare. */
  readonly r?: string;
  /** R that runs once before, untimed, such as the data of the call. */
  readonly rSetup?: string;
  /** Relative difference allowed between the two numbers; default 1e-7. State the reason where R needs more. */
  readonly tolerance?: number;
  /** What one call of ours should take at most, in microseconds. */
  readonly goal?: number;
}
