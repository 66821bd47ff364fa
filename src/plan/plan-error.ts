/** A plan that cannot be used: every fault found, each naming its place in the file. */
export class PlanError extends Error {
  readonly file: string;
  readonly faults: readonly string[];

  constructor(file: string, faults: readonly string[]) {
    super(faults.map((fault) => `${file}: ${fault}`).join("\n"));
    this.name = "PlanError";
    this.file = file;
    this.faults = faults;
  }
}
