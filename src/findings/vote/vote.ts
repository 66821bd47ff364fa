/** Answers to "how many would succeed?": 0, 10, ... 100 per cent, as fractions. */
export const expectedSteps = [0, 0.1, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9, 1] as const;

/** Steps put together for the paired test, fixed before any vote; each the last step it holds. */
export const expectedBands = [
  { name: "40% or less", last: 4 },
  { name: "50 or 60%", last: 6 },
  { name: "70 or 80%", last: 8 },
  { name: "90% or more", last: 10 },
] as const;

/** Hands as the presenter counted them. */
export interface HandCount {
  /** Hands for each step of expected success. */
  readonly expected: readonly number[];
  /** Would you do it? */
  readonly yes: number;
  readonly no: number;
}

/** One voter's answers in one poll: place of the step, and would he or she do it; null where nothing was answered. */
export interface Answer {
  readonly step: number | null;
  readonly would: boolean | null;
}

/** A numbered voter at the keypad; null before the voter has voted in that poll. */
export interface Ballot {
  readonly voter: number;
  readonly before: Answer | null;
  readonly after: Answer | null;
}

/** Both polls: hands counted (no pairs are known), or ballots by number (pairs). */
export type Vote =
  | { readonly kind: "hands"; readonly before: HandCount; readonly after: HandCount }
  | { readonly kind: "ballots"; readonly ballots: readonly Ballot[] };

export const noHands: HandCount = { expected: expectedSteps.map(() => 0), yes: 0, no: 0 };
