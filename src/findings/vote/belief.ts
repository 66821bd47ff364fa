import { betaByMoments, type BetaBelief } from "../../stats/belief/beta-by-moments.js";
import { betaCurve, type CurvePoint } from "../../stats/belief/beta-curve.js";
import { betaUpdate, type BetaUpdateResult } from "../../stats/belief/beta-update.js";
import type { Count, NotEstimable } from "../../stats/types.js";
import { expectedSteps } from "./vote.js";
import type { Poll } from "./vote-findings.js";

/** The room's guess as a beta curve, and what the paper's count makes of it. */
export interface BeliefFindings {
  /** How the curve got its width: from the spread of the hands, or as if the room had seen so many cases. */
  readonly width: "hands" | { readonly cases: number };
  readonly update: BetaUpdateResult | NotEstimable;
  readonly before: readonly CurvePoint[];
  readonly after: readonly CurvePoint[];
}

const points = 120;

/** @param width "hands": by moments; else the number of cases the room's guess is worth */
export function belief(poll: Poll, count: Count | null, width: BeliefFindings["width"]): BeliefFindings {
  const none = (because: string): BeliefFindings => ({
    width,
    update: { estimate: null, because },
    before: [],
    after: [],
  });
  if (poll.mean === null) return none("nobody has guessed yet");
  const shape = width === "hands" ? byHands(poll) : byCases(poll.mean, width.cases);
  if ("because" in shape) return none(shape.because);
  if (count === null || count.trials === 0) return none("the paper states no count to set beside the guess");
  const update = betaUpdate(shape, count);
  return { width, update, before: betaCurve(update.before, points), after: betaCurve(update.after, points) };
}

function byHands({ expected }: Poll): BetaBelief | NotEstimable {
  const found = betaByMoments(expected.flatMap((n, i) => Array.from({ length: n }, () => expectedSteps[i]!)));
  return "because" in found ? { estimate: null, because: found.because } : { a: found.a, b: found.b };
}

function byCases(mean: number, cases: number): BetaBelief | NotEstimable {
  if (mean === 0 || mean === 1)
    return { estimate: null, because: "all expect the same end of the scale, where no beta curve has its mean" };
  return { a: mean * cases, b: (1 - mean) * cases };
}
