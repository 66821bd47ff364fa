import type { CodeKey } from "../table/find-keys.js";
import type { RawCell, Value } from "../types.js";

/** One way to answer a question about a cell, and what the cell then means. */
export interface Choice {
  readonly label: string;
  readonly value: Value;
  /** Values of the two limbs, used when the row is split into two limbs of one child. */
  readonly limbs?: { readonly left: Value; readonly right: Value };
  /** A length in millimetres that becomes a share of the width of the same row. */
  readonly ofWidth?: number;
}

/** What a cell was taken for: understood with the reason where its text was recoded, or asked about. */
export interface Reading {
  readonly value: Value;
  /** Reason of a recoding, for the log. */
  readonly why?: string;
  readonly asks?: Asks;
}

/** A question about one text, or about all cells of a column that share `topic`. */
export interface Asks {
  /** Part of the question's lasting name; like cells of a column with one topic are asked together. */
  readonly topic: string;
  /** Text found as it may be shown; empty when the question covers different texts. */
  readonly text: string;
  readonly sentence: string;
  readonly choices: readonly Choice[];
  /** Used until the answer, where the text leaves no doubt about the value, only about its exactness. */
  readonly meanwhile?: Value;
}

/** What is known of a column before its cells are read one by one. */
export interface ColumnFacts {
  readonly name: string;
  readonly decimalComma: boolean | undefined;
  readonly dateOrder: "dayFirst" | "monthFirst" | "mixed" | "unproved";
  readonly unit: string | undefined;
  readonly latestYear: number;
  /** Kind of most values in a column without a role of its own. */
  readonly values: "number" | "date" | "yesNo" | "text";
  /** Grades are words or letters. */
  readonly wordGrades: boolean;
  /** Grades go beyond VI, so that X can be one. */
  readonly tenGrades?: true;
  /** Bounds of the plausible numbers, for codes such as 999. */
  readonly usual: { readonly low: number; readonly high: number } | undefined;
  /** Years of a column of dates, in their order. */
  readonly years?: readonly number[];
  /** First and last certain date, for serial numbers. */
  readonly span: { readonly first: string; readonly last: string } | undefined;
  readonly kind: "text" | "workbook";
  /** The sheet's own key to the codes of the column. */
  readonly key?: CodeKey;
  /** Codes of the people named in a column of operators, by name in lower case. */
  readonly staff?: ReadonlyMap<string, string>;
  /** Bare numbers of a measurement that are both fractions of one and far above one. */
  readonly mixedShares?: true;
  /** Heading of the column with the width of the bone, where the sheet has one. */
  readonly width?: string;
  /** Order of two values in one cell, as the heading says: "R/L". */
  readonly pair?: "left first" | "right first";
  /** Whether the column holds angles of motion. */
  readonly motion?: true;
}

/** Facts of a column of which nothing is known. */
export const plainFacts: ColumnFacts = {
  name: "",
  decimalComma: undefined,
  dateOrder: "unproved",
  unit: undefined,
  latestYear: 2049,
  values: "text",
  wordGrades: false,
  usual: undefined,
  span: undefined,
  kind: "text",
};

export type Reader = (text: string, facts: ColumnFacts, cell: RawCell) => Reading;

export const missing = (reason: Extract<Value, { kind: "missing" }>["reason"]): Value => ({ kind: "missing", reason });
export const notKnown: Choice = { label: "not known", value: missing("unknown") };
export const leftOut: readonly Choice[] = [
  notKnown,
  { label: "not done", value: missing("notDone") },
  { label: "not applicable", value: missing("notApplicable") },
  { label: "lost", value: missing("lost") },
];

/** Choices for a cell that holds two values: which limb has which. */
export function limbChoices(first: Value, second: Value, show: (value: Value) => string): Choice[] {
  const one = (left: Value, right: Value): Choice => ({
    label: `left ${show(left)}, right ${show(right)}`,
    value: missing("unknown"),
    limbs: { left, right },
  });
  return [one(first, second), one(second, first)];
}

/** A cell that cannot be read in its column; the plain choices are the kinds of missing. */
export function unreadable(text: string, expected: string, choices: readonly Choice[] = []): Reading {
  return ask("value", text, `"${text}" is not ${expected}: what does it mean?`, [...choices, ...leftOut]);
}

export function ask(
  topic: string,
  text: string,
  sentence: string,
  choices: readonly Choice[],
  meanwhile?: Value,
): Reading {
  const asks: Asks = { topic, text, sentence, choices, ...(meanwhile ? { meanwhile } : {}) };
  return { value: meanwhile ?? { kind: "asked", question: "" }, asks };
}
