import type { PrintedNumber, Span } from "./text/token.js";

/** The answer of each of the three lights. "cannot be checked" is no pass. */
export const lights = ["holds", "fails", "cannot be checked"] as const;
export type Light = (typeof lights)[number];

export const claimKinds = [
  "percentage",
  "interval",
  "zero event",
  "p value",
  "difference",
  "odds ratio",
  "risk ratio",
  "ratio",
  "number needed to treat",
  "kappa",
  "mean",
  "total",
  "p against interval",
  "test statistic",
  "denominator",
  "over-claim",
] as const;
export type ClaimKind = (typeof claimKinds)[number];

/** One checkable statement of the text, with its verdicts. */
export interface Claim extends Span {
  readonly kind: ClaimKind;
  /** The numbers as printed, by name. */
  readonly printed: Readonly<Record<string, PrintedNumber>>;
  /** The same numbers computed from the counts, unrounded and in the unit of the print. */
  readonly recomputed: Readonly<Record<string, number | null>>;
  readonly arithmetic: Light;
  readonly unit: Light;
  readonly conclusion: Light;
  /** The sum in a sentence, and what to ask. */
  readonly because: string;
  /** Every method and convention that gives the printed digits. */
  readonly reproducedBy: readonly string[];
  /** What would change the verdict: other units of analysis, other conventions, a few failures more. */
  readonly wouldChange: readonly string[];
}
