import { standardisedProportion } from "../../stats/strata/standardised-proportion.js";
import type { BandedRate } from "../series/series-findings.js";
import { bandedRate } from "./banded-rate.js";

/** Two invented teams of equal size; the second is better in each grade, whatever its mix. */
export interface TeamRates {
  readonly name: string;
  readonly low: BandedRate | null;
  readonly high: BandedRate | null;
  readonly all: BandedRate;
}

export interface GradeMixPlay {
  /** Cases of a high grade in the second team. */
  readonly high: number;
  readonly teams: readonly TeamRates[];
  /** Both with the grade mix of the first team; null where the second has no case of a grade. */
  readonly sameMix: readonly (number | null)[];
  /** The second team looks worse, or no better, though it is better in each grade. */
  readonly misleads: boolean;
}

export const teamSize = 40;
/** Steps of the slider: with tens every share below is a whole number of cases. */
export const highSteps = [0, 10, 20, 30, 40] as const;
const firstHigh = 10;
/** Successes in ten, low grades and high. */
const [first, second] = [
  { low: 8, high: 4 },
  { low: 9, high: 5 },
];

/**
 * Simpson's reversal to play with: the shares within a grade stay, the second team's mix moves.
 * @param high one of `highSteps`
 * @throws RangeError when it is not
 * @see Simpson 1951, J R Stat Soc B 13:238-241
 */
export function gradeMixPlay(high: number, level: number): GradeMixPlay {
  if (!highSteps.some((step) => step === high))
    throw new RangeError(`gradeMixPlay: high must be one of ${highSteps.join(", ")}, got ${high}`);
  const teams = [team("Team 1", first, firstHigh, level), team("Team 2", second, high, level)];
  const mix = [teamSize - firstHigh, firstHigh];
  const sameMix = teams.map(
    (one) =>
      standardisedProportion(
        [one.low, one.high].map((rate) => ({ successes: rate?.successes ?? 0, trials: rate?.cases ?? 0 })),
        mix,
        { level },
      ).estimate,
  );
  return { high, teams, sameMix, misleads: teams[1]!.all.successes <= teams[0]!.all.successes };
}

function team(
  name: string,
  inTen: { readonly low: number; readonly high: number },
  high: number,
  level: number,
): TeamRates {
  const cases = { low: teamSize - high, high };
  const successes = { low: (inTen.low * cases.low) / 10, high: (inTen.high * cases.high) / 10 };
  const rate = (grade: "low" | "high") =>
    cases[grade] === 0 ? null : bandedRate(successes[grade], cases[grade], level);
  return {
    name,
    low: rate("low"),
    high: rate("high"),
    all: bandedRate(successes.low + successes.high, teamSize, level),
  };
}
