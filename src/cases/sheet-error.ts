/** One thing wrong in a file, in the words a person can act on. */
export interface SheetIssue {
  readonly row?: number;
  readonly column?: string;
  readonly value?: string;
  readonly rule: string;
  /** Id of the question whose answer is at fault. */
  readonly question?: string;
}

/** A file that cannot be used, with every issue found, not the first only. */
export class SheetError extends Error {
  readonly file: string;
  readonly issues: readonly SheetIssue[];

  constructor(file: string, issues: readonly SheetIssue[]) {
    super(issues.map((issue) => `${file}: ${sentence(issue)}`).join("\n"));
    this.name = "SheetError";
    this.file = file;
    this.issues = issues;
  }
}

function sentence({ row, column, value, rule }: SheetIssue): string {
  const place = [row === undefined ? "" : `row ${row}`, column === undefined ? "" : `column "${column}"`]
    .filter(Boolean)
    .join(", ");
  const got = value === undefined ? "" : `, got "${value}"`;
  return `${place ? `${place}: ` : ""}${rule}${got}`;
}
