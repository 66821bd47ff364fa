import { gradeProfiles } from "./grade-profiles.js";
import type { PooledCoefficient } from "./pooled-coefficient.js";

/** How values may be compared: same or not, by order, by distance, by relative distance. */
export const alphaMetrics = ["nominal", "ordinal", "interval", "ratio"] as const;
export type AlphaMetric = (typeof alphaMetrics)[number];

/**
 * Krippendorff's alpha over profiles of readings, ready to be resampled.
 *
 * @param scale the values in rising order
 * @param readings places in that scale
 * @see Krippendorff 2011, Computing Krippendorff's Alpha-Reliability, University of Pennsylvania
 */
export function alphaCoefficient(
  scale: readonly number[],
  readings: readonly (readonly (number | null)[])[],
  metric: AlphaMetric,
): PooledCoefficient {
  const { profiles, of } = gradeProfiles({ grades: scale.length, readings });
  const totals = new Float64Array(scale.length);
  const share = profiles.map(({ counts, readings: read }) => (read < 2 ? null : { counts, pairs: read - 1 }));
  const fixed = metric === "ordinal" ? null : distances(scale, metric);
  const apart = share.map((profile) => (profile && fixed ? spread(profile.counts, fixed) / profile.pairs : 0));
  const value = (times: Float64Array): number => {
    totals.fill(0);
    let paired = 0;
    share.forEach((profile, k) => {
      if (!profile || times[k] === 0) return;
      profile.counts.forEach((count, grade) => (totals[grade]! += times[k]! * count));
      paired += times[k]! * (profile.pairs + 1);
    });
    const distance = fixed ?? ordinalDistances(totals);
    let observed = 0;
    share.forEach((profile, k) => {
      if (profile && times[k]! > 0)
        observed += times[k]! * (fixed ? apart[k]! : spread(profile.counts, distance) / profile.pairs);
    });
    const expected = spread(totals, distance);
    return expected > 0 ? 1 - ((paired - 1) * observed) / expected : NaN;
  };
  return { kindOf: of, times: Float64Array.from(profiles, (profile) => profile.times), value };
}

/** Sum over pairs of different values of count x count x squared distance. */
function spread(counts: ArrayLike<number>, distance: readonly Float64Array[]): number {
  let sum = 0;
  for (let a = 1; a < counts.length; a++) {
    if (counts[a] === 0) continue;
    const row = distance[a]!;
    for (let b = 0; b < a; b++) sum += counts[a]! * counts[b]! * row[b]!;
  }
  return sum;
}

function distances(scale: readonly number[], metric: AlphaMetric): Float64Array[] {
  const squared = (a: number, b: number): number => {
    if (metric === "nominal") return 1;
    return metric === "interval" ? (a - b) ** 2 : ((a - b) / (a + b)) ** 2;
  };
  return scale.map((a, i) => Float64Array.from(scale.slice(0, i), (b) => squared(a, b)));
}

/** Values are as far apart as the readings from one to the other, each end counting half. */
function ordinalDistances(totals: ArrayLike<number>): Float64Array[] {
  const middles: number[] = [];
  let below = 0;
  for (let a = 0; a < totals.length; a++) {
    middles.push(below + totals[a]! / 2);
    below += totals[a]!;
  }
  return middles.map((a, i) => Float64Array.from(middles.slice(0, i), (b) => (a - b) ** 2));
}
