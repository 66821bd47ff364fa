import type { CheckedText } from "./check-text.js";
import type { Claim, Light } from "./claim.js";

export const weights = ["major", "minor"] as const;

/** One comment to the authors, to be edited before it is sent. */
export interface ReviewComment {
  readonly weight: (typeof weights)[number];
  readonly text: string;
  /** Place in `claims` of the checked text. */
  readonly claim: number;
}

export interface Review {
  /** What was checked and what holds, said first. */
  readonly opening: string;
  readonly comments: readonly ReviewComment[];
  /** Claims whose arithmetic was reproduced, as "text: by which method". */
  readonly verified: readonly string[];
}

/** The one word for a claim: anything that fails, else whether its arithmetic was reproduced. */
export function overall(claim: Claim): Light {
  return [claim.arithmetic, claim.unit, claim.conclusion].includes("fails") ? "fails" : claim.arithmetic;
}

/** Polite comments on what fails, the open questions after them, and the list of what was verified. */
export function reviewComments({ claims }: CheckedText): Review {
  const comments: ReviewComment[] = [];
  claims.forEach((claim, i) => {
    if (overall(claim) === "fails")
      comments.push({ weight: "major", text: `"${oneLine(claim.text)}": ${claim.because}`, claim: i });
  });
  claims.forEach((claim, i) => {
    const asks = claim.because.includes("lease");
    if (overall(claim) !== "fails" && asks && claim.kind !== "percentage")
      comments.push({ weight: "minor", text: `"${oneLine(claim.text)}": ${claim.because}`, claim: i });
  });
  const sound = claims.filter((claim) => overall(claim) === "holds");
  const verified = sound.map(({ text, reproducedBy }) => {
    const by = reproducedBy.length > 0 ? `: ${reproducedBy.join("; ")}` : "";
    return `${oneLine(text)}${by}`;
  });
  const opening = `I checked ${claims.length} printed ${claims.length === 1 ? "number" : "numbers"}; ${sound.length} can be reproduced from what is printed.`;
  return { opening, comments, verified };
}

const oneLine = (text: string): string => text.replaceAll(/\s+/g, " ").trim();
