import { unitWords } from "../../report/unit-words.js";
import type { PictureMaker } from "../section-pictures.js";
import { oneIn, someOf, someWords } from "../some-cases.js";
import { techniqueLadder, type LadderMark } from "../technique-ladder.js";

/** At which step each case ended, conversions in the outline of the step they began at. */
export const ladderPicture: PictureMaker = (findings) => {
  const { ladder, cases } = findings;
  if ("estimate" in ladder) return null;
  const outcomeOf = new Map(cases.map(({ id, outcome }) => [id, outcome]));
  const one = oneIn(ladder.flatMap(({ paths }) => paths.flatMap(({ cases: ids }) => ids)).length);
  const rows = ladder.map(({ grade, paths }) => {
    const marks = paths.flatMap(({ first, final, cases: ids }) =>
      someOf(ids, one).map((id): LadderMark => ({
        id,
        technique: final,
        outcome: outcomeOf.get(id) === "success" ? "success" : "failure",
        ...(first === final ? {} : { first }),
        ...(outcomeOf.get(id) === "success" || outcomeOf.get(id) === "failure" ? {} : { supposed: true }),
      })),
    );
    const ended = (final: string): string => {
      const n = paths.reduce((sum, path) => sum + (path.final === final ? path.cases.length : 0), 0);
      return n === 0 ? "" : String(n);
    };
    return {
      label: grade,
      marks,
      counts: { closed: ended("closed"), assisted: ended("assisted"), open: ended("open") },
    };
  });
  return {
    name: "technique-ladder",
    caption: `Each mark is one eligible ${unitWords(findings).one} at the step where it ended, filled where treatment succeeded, dashed where that is not known; an outline shows the step a converted case began at.${someWords(one)}`,
    drawing: (width) =>
      techniqueLadder(
        rows,
        { closed: "ended closed", assisted: "ended assisted", open: "ended open" },
        width === undefined ? {} : { width },
      ),
  };
};
