import { wilson } from "../../stats/wilson.js";
import type { BandedRate } from "../series/series-findings.js";

/** A count with its share, its Wilson interval at the level and that at 50%. */
export function bandedRate(successes: number, cases: number, level: number): BandedRate {
  const { estimate, interval } = wilson(successes, cases, { level });
  return { successes, cases, estimate, interval, inner: wilson(successes, cases, { level: 0.5 }).interval };
}
