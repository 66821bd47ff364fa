import { levelText } from "../../report/number-text.js";
import { unitWords } from "../../report/unit-words.js";
import { caseMarks } from "../case-marks.js";
import type { PictureMaker } from "../section-pictures.js";
import { rateRow } from "./rate-row.js";

/** The subgroups of the plan, exploratory. */
export const subgroupsPicture: PictureMaker = (findings) => {
  if (findings.subgroups.length === 0) return null;
  const rows = findings.subgroups.map(({ name, inside }) => rateRow(name, inside));
  return {
    name: "subgroups",
    caption: `Exploratory. Each mark is one ${unitWords(findings).one}: filled, success; open ring, not. Bands: 50% and ${levelText(findings.level)} Wilson intervals.`,
    drawing: (width) => caseMarks(rows, width === undefined ? {} : { width }),
  };
};
