import { requireLevel, requireNumbers, requireOptions } from "../guards.js";
import type { Count } from "../types.js";
import { hodgesLehmannPaired, type HodgesLehmannPaired } from "./hodges-lehmann-paired.js";
import { medianInterval, type MedianInterval } from "./median-interval.js";
import { pairedDifferences } from "./paired-differences.js";
import { pairedMeanDifference, type PairedMeanDifference } from "./paired-mean-difference.js";
import { signedRank, type SignedRank } from "./signed-rank.js";
import type { NotEstimable } from "../types.js";

export interface PairedLoss {
  readonly method: "loss against the other side";
  readonly level: number;
  readonly n: number;
  /** Other side less injured side, pair by pair: positive where motion was lost. */
  readonly losses: readonly number[];
  readonly median: MedianInterval;
  readonly smallest: number;
  readonly largest: number;
  readonly typical: HodgesLehmannPaired;
  readonly mean: PairedMeanDifference;
  readonly signedRank: SignedRank | NotEstimable;
  /** Limbs that lost no more than the stated amount; null when none was stated. */
  readonly within: (Count & { readonly loss: number }) | null;
}

/**
 * Loss of a measurement on the injured side against the child's own other side. Children injured on both sides have no
 * other side to compare with: leave them out and say so.
 *
 * @param pairs.injured finite numbers, at least one, in the unit of the measurement
 * @param pairs.other as many, in the same order
 * @param options.level coverage in (0, 1); default 0.95
 * @param options.acceptable largest loss that counts as kept, in the unit of the measurement, zero or more
 * @throws RangeError when the sides differ in number, a value is not finite, or an option is out of range
 * @example pairedLoss({ injured: [160, 150, 170], other: [170, 170, 170] }, { acceptable: 10 }).within // => { successes: 2, trials: 3, loss: 10 }
 */
export function pairedLoss(
  pairs: { readonly injured: readonly number[]; readonly other: readonly number[] },
  options: { readonly level?: number; readonly acceptable?: number } = {},
): PairedLoss {
  requireOptions("pairedLoss", options, ["level", "acceptable"]);
  const { level = 0.95, acceptable } = options;
  requireLevel("pairedLoss", level);
  const { injured, other } = pairs;
  requireNumbers("pairedLoss", "injured", injured, 1);
  requireNumbers("pairedLoss", "other", other, 1);
  if (injured.length !== other.length)
    throw new RangeError(
      `pairedLoss: injured and other must be equally many, got ${injured.length} and ${other.length}`,
    );
  if (acceptable !== undefined && !(acceptable >= 0 && acceptable < Infinity))
    throw new RangeError(`pairedLoss: acceptable must be zero or more, got ${acceptable}`);

  const losses = pairedDifferences({ first: other, second: injured });
  return {
    method: "loss against the other side",
    level,
    n: losses.length,
    losses,
    median: medianInterval(losses, { level }),
    smallest: losses.reduce((least, loss) => Math.min(least, loss), Infinity),
    largest: losses.reduce((most, loss) => Math.max(most, loss), -Infinity),
    typical: hodgesLehmannPaired(losses, { level }),
    mean: pairedMeanDifference(losses, { level }),
    signedRank: signedRank(losses),
    within:
      acceptable === undefined
        ? null
        : {
            successes: losses.filter((loss) => loss <= acceptable).length,
            trials: losses.length,
            loss: acceptable,
          },
  };
}
