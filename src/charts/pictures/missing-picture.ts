import { levelText } from "../../report/number-text.js";
import { unitWords } from "../../report/unit-words.js";
import { caseMarks } from "../case-marks.js";
import type { PictureMaker } from "../section-pictures.js";
import { rateRow } from "./rate-row.js";

/** The rate as analysed, and with all the missing counted either way. */
export const missingPicture: PictureMaker = (findings) => {
  const { lost, notRecorded, worst, analysed, best } = findings.missing;
  const missing = new Set([...lost, ...notRecorded]);
  if (missing.size === 0) return null;
  const look = (id: string) => (missing.has(id) ? { supposed: true } : {});
  const rows = [
    rateRow("As analysed", analysed),
    rateRow("All missing failed", worst, look),
    rateRow("All missing succeeded", best, look),
  ];
  return {
    name: "missing",
    caption: `Each mark is one ${unitWords(findings).one}; dashed, supposed. Bands: 50% and ${levelText(findings.level)} Wilson intervals.`,
    drawing: (width) => caseMarks(rows, width === undefined ? {} : { width }),
  };
};
