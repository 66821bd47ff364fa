import type { ReadingColumn } from "../../cases/readings/types.js";

/** Places of one column a rater, the first occasion of each: repeats of one rater are no other raters. */
export function firstOccasions(columns: readonly ReadingColumn[]): readonly number[] {
  return columns.flatMap(({ rater, occasion }, place) => {
    const same = columns.filter((column) => column.rater === rater);
    const first = Math.min(...same.map((column) => column.occasion));
    return occasion === first ? [place] : [];
  });
}
