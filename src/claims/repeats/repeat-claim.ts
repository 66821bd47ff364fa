import type { Claim } from "../claim.js";

/** A claim about a quantity that the text prints twice, differently. */
export function repeatClaim(
  text: string,
  { start, end }: { readonly start: number; readonly end: number },
  printed: Claim["printed"],
  recomputed: Claim["recomputed"],
  because: string,
): Claim {
  return {
    text: text.slice(start, end),
    start,
    end,
    kind: "denominator",
    printed,
    recomputed,
    arithmetic: "fails",
    unit: "cannot be checked",
    conclusion: "cannot be checked",
    because,
    reproducedBy: [],
    wouldChange: [],
  };
}
