import { numberText } from "../../report/sections/how-the-arm-moves.js";
import type { CaseMark } from "../case-mark.js";
import type { PictureMaker } from "../section-pictures.js";
import { oneIn, someOf, someWords } from "../some-cases.js";
import { valueStrip, type ValueStripRow } from "../value-strip.js";

/** Loss of motion by grade, every child a mark. */
export const armPicture: PictureMaker = (findings) => {
  const { arm } = findings;
  if ("estimate" in arm || arm.pairs.length === 0) return null;
  const outcomeOf = new Map(findings.cases.map(({ id, outcome }) => [id, outcome]));
  const mark = (id: string): CaseMark => ({ id, outcome: outcomeOf.get(id) === "success" ? "success" : "failure" });
  const one = oneIn(arm.pairs.length);
  const rows = arm.byGrade.map(({ grade, cases, summary }): ValueStripRow => {
    const here = new Set(cases);
    return {
      label: grade,
      count: `${cases.length} measured`,
      note: summary === null ? "none" : `median ${numberText(summary.median)}`,
      cases: someOf(
        arm.pairs.filter(({ id }) => here.has(id)),
        one,
      ).map(({ id, injured, other }) => ({ mark: mark(id), value: other - injured })),
      summary,
    };
  });
  return {
    name: "motion",
    caption: `Each mark is one child at the ${arm.name} lost against the other side: filled, success; open ring, not. Bars: range, quartiles, median.${someWords(one)}`,
    drawing: (width) =>
      valueStrip(
        rows,
        { title: `loss of ${arm.name} against the other side, in the unit of the sheet`, reference: 0 },
        width === undefined ? {} : { width },
      ),
  };
};
