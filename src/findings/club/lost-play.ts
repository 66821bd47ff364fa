import type { BandedRate } from "../series/series-findings.js";
import type { NotEstimable } from "../../stats/types.js";
import { bandedRate } from "./banded-rate.js";

/** A reported rate with so many lost cases counted either way. */
export interface LostPlay {
  readonly lost: number;
  readonly reported: BandedRate | NotEstimable;
  /** null without a reported count. */
  readonly either: { readonly worst: BandedRate; readonly best: BandedRate } | null;
}

/** @param lost integer of at least 0 */
export function lostPlay(reported: BandedRate | NotEstimable, lost: number, level: number): LostPlay {
  if (!(Number.isInteger(lost) && lost >= 0))
    throw new RangeError(`lostPlay: lost must be an integer of at least 0, got ${lost}`);
  if (reported.estimate === null) return { lost, reported, either: null };
  const { successes, cases } = reported;
  const either = {
    worst: bandedRate(successes, cases + lost, level),
    best: bandedRate(successes + lost, cases + lost, level),
  };
  return { lost, reported, either };
}
