/** A printed number that opens: its text and the ids of the cases behind it. */
export interface OpenNumber {
  readonly text: string;
  /** What the list of cases is called when it opens. */
  readonly title: string;
  readonly cases: readonly string[];
  /** How many further cases are counted but not listed, where the list would be too long to draw. */
  readonly more?: number;
}

export type Span = string | OpenNumber;
/** One paragraph: words and numbers that open. */
export type Paragraph = readonly Span[];

/** A table as it is printed, copied and saved: every cell is text, rounded once. */
export interface TextTable {
  readonly caption: string;
  readonly head: readonly string[];
  readonly rows: readonly (readonly Span[])[];
  readonly notes: readonly string[];
  /** How many further rows the saved table has, where there are too many to draw. */
  readonly more?: number;
}

/** One question of the page with its answer, in words and as a table. */
export interface Section {
  readonly id: string;
  readonly question: string;
  readonly answer: readonly Paragraph[];
  /** What the numbers do not show; said beside the conclusion it limits. */
  readonly cautions: readonly Paragraph[];
  readonly tables: readonly TextTable[];
}

/** The words alone. */
export function plainText(paragraph: Paragraph): string {
  return paragraph.map(spanText).join("");
}

/** The words of one span. */
export function spanText(span: Span): string {
  return typeof span === "string" ? span : span.text;
}
