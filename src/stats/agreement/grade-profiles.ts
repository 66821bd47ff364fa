import type { GradeReadings } from "./grade-readings.js";

/** Radiographs with the same number of readings of each grade: all that pooled coefficients look at. */
export interface GradeProfile {
  /** Readings of each grade. */
  readonly counts: readonly number[];
  readonly readings: number;
  /** Radiographs with this profile. */
  readonly times: number;
}

export interface GradeProfiles {
  readonly profiles: readonly GradeProfile[];
  /** Place of each radiograph's profile. */
  readonly of: Int32Array;
}

/** Groups radiographs by how many of their readings fell on each grade. Readings must have been checked. */
export function gradeProfiles({ grades, readings }: GradeReadings): GradeProfiles {
  const places = new Map<string, number>();
  const found: { counts: number[]; readings: number; times: number }[] = [];
  const of = Int32Array.from(readings, (row) => {
    const counts = new Array<number>(grades).fill(0);
    for (const grade of row) if (grade !== null) counts[grade]!++;
    const key = counts.join();
    let place = places.get(key);
    if (place === undefined) {
      place = found.length;
      places.set(key, place);
      found.push({ counts, readings: counts.reduce((sum, count) => sum + count, 0), times: 0 });
    }
    found[place]!.times++;
    return place;
  });
  return { profiles: found, of };
}
