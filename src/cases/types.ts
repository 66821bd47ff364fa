/** What a column holds, in the words of the house. */
export const roles = [
  "id",
  "child",
  "side",
  "sex",
  "age",
  "grade",
  "measurement",
  "firstTechnique",
  "finalTechnique",
  "success",
  "complication",
  "followUp",
  "date",
  "operator",
  "rater",
  "note",
  "identifier",
  "other",
] as const;
export type Role = (typeof roles)[number];

/** Why a cell holds no value; five different things in a follow-up, and blank besides. */
export const missingReasons = ["blank", "notDone", "notApplicable", "lost", "died", "unknown"] as const;
export type MissingReason = (typeof missingReasons)[number];

/** One cell as the file holds it: its shown text, and what a workbook says of it. */
export interface RawCell {
  readonly text: string;
  /** Typed value of a workbook cell: number, boolean, or ISO date text in `date`. */
  readonly number?: number;
  readonly boolean?: boolean;
  readonly date?: string;
  readonly formula?: boolean;
  readonly error?: boolean;
  readonly comment?: string;
}

/** One record of a text file or one row of a workbook sheet; `number` is 1-based as in DESIGN.md. */
export interface RawRow {
  readonly number: number;
  readonly cells: readonly RawCell[];
  readonly hidden?: boolean;
}

/** A file as read, nothing interpreted. */
export interface RawSheet {
  /** File name without its folder. */
  readonly file: string;
  readonly kind: "text" | "workbook";
  readonly sheetName?: string;
  readonly otherSheets?: readonly string[];
  /** The other sheets of the workbook that hold anything. */
  readonly others?: readonly RawSheet[];
  readonly separator?: "," | ";" | "\t" | "|";
  readonly encoding?: string;
  readonly rows: readonly RawRow[];
  /** Merged ranges of a workbook, 1-based, ends included. */
  readonly merges?: readonly {
    readonly top: number;
    readonly left: number;
    readonly bottom: number;
    readonly right: number;
  }[];
  readonly hiddenColumns?: readonly number[];
  /** 1-based rows with cells that carry a fill colour of their own; colour may be data. */
  readonly coloured?: readonly number[];
  /** 1-based rows with text that is struck through. */
  readonly struck?: readonly number[];
  /** What the reader had to do to read the file at all, one sentence each. */
  readonly remarks?: readonly string[];
}

/** A cell understood. `asked` means a question is open: it counts as neither yes nor no until answered. */
export type Value =
  | { readonly kind: "text"; readonly text: string }
  | {
      readonly kind: "number";
      readonly number: number;
      /** ">170" is kept as 170 with bound "above": the true value is not known. */
      readonly bound?: "above" | "below";
      readonly approximate?: true;
      /** Unit of the cell or of its column, where it has one: "mm", "°", "percent" (24% is 24), "share" (2/3 of the whole). */
      readonly unit?: string;
    }
  | { readonly kind: "date"; readonly iso: string }
  | { readonly kind: "yesNo"; readonly yes: boolean }
  | { readonly kind: "grade"; readonly grade: string; readonly sub?: string }
  /** Several named things in one cell (complications); none of them is the empty list. */
  | { readonly kind: "list"; readonly items: readonly string[] }
  | { readonly kind: "missing"; readonly reason: MissingReason }
  | { readonly kind: "asked"; readonly question: string };

/** One column of the case table. Quarantined columns stay listed, their values do not. */
export interface Column {
  readonly name: string;
  readonly role: Role;
  /** 1-based position in the file. */
  readonly position: number;
  /** A few values as they may be shown; empty for identifiers. */
  readonly examples: readonly string[];
  /**
   * Of a success column: "negative" when a yes under its heading is a failure ("Failed", "Re-displaced"). The values stay
   * as typed and are not turned round.
   */
  readonly sense?: "positive" | "negative";
  /** Unit of the numbers, from the heading or the cells. */
  readonly unit?: string;
  /** Names of staff stood here; codes are shown in their place. */
  readonly coded?: true;
  /** Of a measurement: the limb that its heading names, the treated one where it names none. */
  readonly limb?: "left" | "right" | "other" | "treated";
}

/** One treated limb (after both limbs of one row were split on consent). */
export interface CaseRow {
  /** Safe to show: the sheet's own study number, or a new number when it had only identifiers. */
  readonly id: string;
  /** Safe to show: equal for the limbs of one child. */
  readonly child: string;
  /** 1-based row in the file. */
  readonly row: number;
  /** Aligned with the table's columns; identifier columns hold missing "notApplicable" here. */
  readonly values: readonly Value[];
}

/** Something only a person can decide. */
export interface Question {
  /** Stable over versions of the sheet. */
  readonly id: string;
  /** 1-based rows it concerns; empty for the whole file. */
  readonly rows: readonly number[];
  readonly column: string;
  /** The text found, never a quarantined one. */
  readonly text: string;
  /** One sentence for a person. */
  readonly asks: string;
  readonly choices: readonly string[];
  /**
   * Of a question about several like cells: the ids of their cases, in the order of the rows. An answer to "ID @ CASE"
   * holds for that case only, and goes before the answer to all.
   */
  readonly cases?: readonly string[];
}

export interface SetAside {
  readonly row: number;
  readonly text: string;
  readonly why: string;
}

/** One reading or recoding, reversible: what stood there and what it was taken for. */
export interface LogEntry {
  /** First row; `rows` has all rows of the column with this text. */
  readonly row: number;
  readonly rows: readonly number[];
  readonly column: string;
  readonly from: string;
  readonly to: string;
  readonly why: string;
}

/** A sheet understood: cases, what was asked, what was set aside; every cell is in exactly one of the three. */
export interface CaseTable {
  readonly file: string;
  readonly header: { readonly rows: readonly number[] };
  /** Sheets read one under the other: rows `first` to `last` are the rows of that sheet, from its row 1. */
  readonly sheets?: readonly { readonly name: string; readonly first: number; readonly last: number }[];
  readonly columns: readonly Column[];
  readonly cases: readonly CaseRow[];
  readonly setAside: readonly SetAside[];
  readonly identifiers: readonly string[];
  readonly questions: readonly Question[];
  readonly log: readonly LogEntry[];
  /** Cells by fate; the three add to all cells of the file. */
  readonly cells: { readonly understood: number; readonly asked: number; readonly setAside: number };
}

/** What a person answered: question id to the choice taken. */
export type Answers = Readonly<Record<string, string>>;
