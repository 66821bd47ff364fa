import { unitWords } from "../../report/unit-words.js";
import { raterStrips, type Strip } from "../rater-strips.js";
import type { PictureMaker } from "../section-pictures.js";
import { oneIn, someOf, someWords } from "../some-cases.js";

/** Every measured case on a strip, with the cut-points and the bands in which the grade is in doubt. */
export const gradingPicture: PictureMaker = (findings) => {
  const { regrading: found } = findings;
  if ("estimate" in found || "estimate" in found.chances || !("source" in found.error)) return null;
  const { chances, cuts, grades, column, error } = found;
  const outcomeOf = new Map(findings.cases.map(({ id, outcome }) => [id, outcome]));
  const one = oneIn(chances.cases.length);
  const strip = (label: string, takes: (id: string) => boolean): Strip => ({
    label,
    readings: someOf(
      chances.cases.filter(({ id }) => takes(id)),
      one,
    ).map(({ id, value }) => ({ id, value })),
  });
  const strips = [
    strip("success", (id) => outcomeOf.get(id) === "success"),
    strip("failure", (id) => outcomeOf.get(id) === "failure"),
    strip("asked", (id) => outcomeOf.get(id) === "asked"),
  ].filter(({ readings }) => readings.length > 0);
  return {
    name: "grading",
    caption: `Each mark is one ${unitWords(findings).one} at its measurement, successes and failures on a strip of their own. Lines: cut-points; bands: 1.96 errors to each side. Open rings lie in a band: another observer may well grade them otherwise.${someWords(one)}`,
    drawing: (width) =>
      raterStrips(strips, cuts, { grades, axis: column, error: error.estimate }, width === undefined ? {} : { width }),
  };
};
