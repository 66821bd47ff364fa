import { unitWords } from "../../report/unit-words.js";
import { caseRun, type CaseRunStep } from "../case-run.js";
import type { PictureMaker } from "../section-pictures.js";
import { oneIn } from "../some-cases.js";

/** Failures so far less those expected, case after case. */
export const practicePicture: PictureMaker = (findings) => {
  const { practice } = findings;
  if ("estimate" in practice) return null;
  const cases = practice.steps.length;
  const one = oneIn(cases);
  const every = practice.steps.map(({ id, failed, excess }, place) => ({
    mark: { id, outcome: failed ? ("failure" as const) : ("success" as const) },
    excess,
    place,
  }));
  const steps = one === 1 ? every : farthest(every, one);
  const unit = unitWords(findings).one;
  const marks =
    one === 1
      ? `Each mark is one ${unit} in the order of treatment: small and filled, success; open ring, failure.`
      : `There are too many cases for a mark each: of each ${one} in the order of treatment the farthest from zero is drawn.`;
  return {
    name: "practice",
    caption: `${marks} The line is the failures so far less those expected of such grades.`,
    drawing: (width) =>
      caseRun(
        steps,
        { x: "case, in the order of treatment", y: "failures above those expected" },
        { cases, ...(width === undefined ? {} : { width }) },
      ),
  };
};

/** Of each so many steps in a row the one farthest from zero, without its mark: the line keeps its extremes. */
function farthest(steps: readonly Omit<CaseRunStep, "mark">[], each: number): CaseRunStep[] {
  const kept: CaseRunStep[] = [];
  for (let from = 0; from < steps.length; from += each) {
    const { excess, place } = steps
      .slice(from, from + each)
      .reduce((far, one) => (Math.abs(one.excess) > Math.abs(far.excess) ? one : far));
    kept.push({ excess, place: place! });
  }
  return kept;
}
