import type { AgreementPage } from "../../../findings/agreement/page-findings.js";
import type { RaterPair } from "../../../stats/agreement/rater-pairs.js";
import type { OpenNumber } from "../../text.js";

/** A printed number that opens radiographs by their places. */
export function imagesSpan(page: AgreementPage, text: string, title: string, places: readonly number[]): OpenNumber {
  return { text, title, cases: places.map((place) => page.readings.radiographs[place]!.id) };
}

export function columnName(page: AgreementPage, place: number): string {
  return page.readings.columns[place]!.name;
}

/** The pair of columns that is looked at. */
export function chosenPair(page: AgreementPage): RaterPair {
  const [a, b] = page.choices.pair;
  return page.grades.pairs.find(({ raters }) => raters[0] === a && raters[1] === b)!;
}

/** Places of the radiographs of a pair whose grades are at most so far apart. */
export function within({ crossTable }: RaterPair, distance: number): number[] {
  return crossTable.members
    .flatMap((row, a) => row.flatMap((cell, b) => (Math.abs(a - b) <= distance ? cell : [])))
    .toSorted((a, b) => a - b);
}
