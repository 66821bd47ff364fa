/** Answers to the items that are scored in the index, and to the plain questions. */
export const scores = ["0", "1", "2"] as const;
export const verdicts = ["yes", "no", "unclear"] as const;

/** Items 1 to 8 for any study, 9 to 12 when groups are compared; then questions to a series of cases. */
export const indexItems = [
  "aim",
  "consecutive",
  "prospective",
  "outcome",
  "assessor",
  "followUp",
  "loss",
  "size",
  "control",
  "period",
  "baseline",
  "analysis",
] as const;
export const caseSeriesItems = [
  "inclusion",
  "measured",
  "identified",
  "allConsecutive",
  "complete",
  "demographics",
  "clinical",
  "outcomesReported",
  "centre",
  "statistics",
] as const;
export type IndexItem = (typeof indexItems)[number];
export type CaseSeriesItem = (typeof caseSeriesItems)[number];
export type AppraisalItem = IndexItem | CaseSeriesItem;

/** What a person answered, with where it stands in the paper. */
export interface AppraisalAnswer {
  /** Empty until answered. */
  readonly verdict: "" | (typeof scores)[number] | (typeof verdicts)[number];
  readonly page: string;
  readonly quotation: string;
}

export type Appraisal = Readonly<Partial<Record<AppraisalItem, AppraisalAnswer>>>;

export const unanswered: AppraisalAnswer = { verdict: "", page: "", quotation: "" };

/** Years of treatment of the two groups, as the paper states them. */
export interface Periods {
  readonly first: { readonly from: number; readonly to: number } | null;
  readonly second: { readonly from: number; readonly to: number } | null;
}
