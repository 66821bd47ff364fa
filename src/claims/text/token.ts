/** A number as somebody printed it: 12.50 has the value 12.5 and two decimals. */
export interface PrintedNumber {
  readonly value: number;
  readonly decimals: number;
}

/** A stretch of the pasted text: offsets in UTF-16 units, `end` exclusive. */
export interface Span {
  readonly text: string;
  readonly start: number;
  readonly end: number;
}

/** One piece of the text. Words are lower case with plain hyphens and apostrophes; marks are one character. */
export interface Token {
  readonly kind: "number" | "word" | "mark";
  readonly text: string;
  readonly start: number;
  readonly end: number;
  /** True when white space or the start of the text stands before it. */
  readonly spaced: boolean;
  /** The word is printed in capitals only: OR is an odds ratio, "or" is not. */
  readonly capitals: boolean;
  readonly number: PrintedNumber | null;
  /** The number is written in words ("thirty-one"). */
  readonly spelled: boolean;
  /** "75,94" without a space: one decimal number or two whole ones; the reader of intervals decides. */
  readonly split: readonly [PrintedNumber, PrintedNumber] | null;
}
