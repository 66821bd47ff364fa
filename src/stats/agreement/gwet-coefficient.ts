import { gradeProfiles } from "./grade-profiles.js";
import type { GradeReadings } from "./grade-readings.js";
import type { PooledCoefficient } from "./pooled-coefficient.js";

/** What Gwet's coefficient and its variance need, over profiles of readings. */
export interface GwetSums {
  readonly coefficient: PooledCoefficient;
  /** Agreement of the readings of each profile (0 when it has fewer than two), and its readings. */
  readonly agreement: readonly number[];
  readonly counts: readonly (readonly number[])[];
  readonly readings: readonly number[];
  /** Sum of the agreement weights over grades x (grades - 1). */
  readonly scale: number;
}

/**
 * AC1 (unweighted) or AC2 (weighted) over profiles of readings, ready to be resampled.
 *
 * Grade shares use every radiograph with a reading, observed agreement those with two or more.
 *
 * @param weights agreement weights, 1 on the diagonal
 * @see Gwet 2008, Br J Math Stat Psychol 61:29-48; Gwet 2014, Handbook of Inter-Rater Reliability, 4th ed
 */
export function gwetSums(given: GradeReadings, weights: readonly (readonly number[])[]): GwetSums {
  const { profiles, of } = gradeProfiles(given);
  const counts = profiles.map((profile) => profile.counts);
  const readings = profiles.map((profile) => profile.readings);
  const agreement = counts.map((count, k) => profileAgreement(count, readings[k]!, weights));
  const total = weights.flat().reduce((sum, weight) => sum + weight, 0);
  const scale = total / (given.grades * (given.grades - 1));
  const shares = new Float64Array(given.grades);
  const value = (times: Float64Array): number => {
    shares.fill(0);
    let read = 0;
    let paired = 0;
    let agreed = 0;
    for (let k = 0; k < counts.length; k++) {
      const weight = times[k]!;
      if (weight === 0 || readings[k] === 0) continue;
      read += weight;
      const each = weight / readings[k]!;
      const count = counts[k]!;
      for (let grade = 0; grade < shares.length; grade++) shares[grade]! += each * count[grade]!;
      if (readings[k]! < 2) continue;
      paired += weight;
      agreed += weight * agreement[k]!;
    }
    if (paired === 0) return NaN;
    const chance = scale * shares.reduce((sum, share) => sum + (share / read) * (1 - share / read), 0);
    return (agreed / paired - chance) / (1 - chance);
  };
  const times = Float64Array.from(profiles, (profile) => profile.times);
  return { coefficient: { kindOf: of, times, value }, agreement, counts, readings, scale };
}

function profileAgreement(
  counts: readonly number[],
  readings: number,
  weights: readonly (readonly number[])[],
): number {
  if (readings < 2) return 0;
  let sum = 0;
  counts.forEach((count, a) => {
    if (count > 0) sum += count * (counts.reduce((s, other, b) => s + weights[a]![b]! * other, 0) - 1);
  });
  return sum / (readings * (readings - 1));
}
