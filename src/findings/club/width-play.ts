import type { BandedRate } from "../series/series-findings.js";
import { bandedRate } from "./banded-rate.js";

/** The same share with more or fewer cases. */
export interface WidthPlay {
  readonly rate: BandedRate;
  /** Width of the interval, a fraction. */
  readonly width: number;
  /** Four times the cases, and the width they give. */
  readonly fourfold: { readonly cases: number; readonly width: number };
}

/** Four in five succeed: whole numbers for every multiple of five. */
const inFive = 4;

/**
 * Four in five, counted in so many cases.
 * @param cases a multiple of 5 from 5 on
 * @throws RangeError when it is not
 */
export function widthPlay(cases: number, level: number): WidthPlay {
  if (!(Number.isInteger(cases / 5) && cases >= 5))
    throw new RangeError(`widthPlay: cases must be a multiple of 5, at least 5, got ${cases}`);
  const rate = bandedRate((inFive * cases) / 5, cases, level);
  const wide = bandedRate(inFive * ((4 * cases) / 5), 4 * cases, level);
  return { rate, width: widthOf(rate), fourfold: { cases: 4 * cases, width: widthOf(wide) } };
}

function widthOf({ interval }: BandedRate): number {
  return interval.high - interval.low;
}
