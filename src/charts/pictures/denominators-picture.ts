import { rungWords } from "../../report/sections/who.js";
import { unitWords } from "../../report/unit-words.js";
import { denominatorLadder, type LadderStep } from "../denominator-ladder.js";
import type { PictureMaker } from "../section-pictures.js";

/** The ladder of denominators with those who left between its rungs. */
export const denominatorsPicture: PictureMaker = (findings) => {
  const words = unitWords(findings);
  const steps = findings.who.ladder.flatMap(({ name, cases, children, leavers }): LadderStep[] => [
    ...leavers.map(({ reason, cases: gone }): LadderStep => ({
      kind: "leavers",
      label: reason,
      cases: gone.length,
      text: `\u2212 ${gone.length}`,
    })),
    { kind: "rung", label: rungWords[name], cases: cases.length, text: words.both(cases.length, children.length) },
  ]);
  return {
    name: "denominators",
    caption: `Each bar is the one above less those who left; each ring is one ${words.one}.`,
    drawing: (width) => denominatorLadder(steps, width === undefined ? {} : { width }),
  };
};
