import { levelText } from "../../report/number-text.js";
import { unitWords } from "../../report/unit-words.js";
import { caseMarks } from "../case-marks.js";
import type { PictureMaker } from "../section-pictures.js";
import { rateRow } from "./rate-row.js";

/** Success by grade, every case a mark. */
export const gradesPicture: PictureMaker = (findings) => {
  const { byGrade, overall } = findings.howOften;
  const rows = [...byGrade.map(({ grade, rate }) => rateRow(grade, rate)), rateRow("All", overall)];
  return {
    name: "success-by-grade",
    caption: `Each mark is one ${unitWords(findings).one}: filled, success; open ring, not. Bands: 50% and ${levelText(findings.level)} Wilson intervals.`,
    drawing: (width) => caseMarks(rows, width === undefined ? {} : { width }),
  };
};
