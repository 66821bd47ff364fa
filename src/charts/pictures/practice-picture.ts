import { unitWords } from "../../report/unit-words.js";
import { caseRun } from "../case-run.js";
import type { PictureMaker } from "../section-pictures.js";
import { oneIn, someOf, someWords } from "../some-cases.js";

/** Failures so far less those expected, case after case. */
export const practicePicture: PictureMaker = (findings) => {
  const { practice } = findings;
  if ("estimate" in practice) return null;
  const one = oneIn(practice.steps.length);
  const steps = someOf(practice.steps, one).map(({ id, failed, excess }) => ({
    mark: { id, outcome: failed ? ("failure" as const) : ("success" as const) },
    excess,
  }));
  return {
    name: "practice",
    caption: `Each mark is one ${unitWords(findings).one} in the order of treatment: small and filled, success; open ring, failure. The line is the failures so far less those expected of such grades.${someWords(one)}`,
    drawing: (width) =>
      caseRun(
        steps,
        { x: "case, in the order of treatment", y: "failures above those expected" },
        { oneIn: one, cases: practice.steps.length, ...(width === undefined ? {} : { width }) },
      ),
  };
};
