import type { Findings } from "../findings/types.js";
import { unitWords } from "./unit-words.js";

/** The line under the title of a page: whose data they are, how many cases, how many left. */
export function headLine(findings: Findings): string {
  const { ladder } = findings.who;
  const [screened, analysed] = [ladder[0]!, ladder.at(-1)!];
  return [
    ...(findings.plan.note === undefined ? [] : [findings.plan.note]),
    findings.sheet.file,
    unitWords(findings).both(screened.cases.length, screened.children.length),
    `${analysed.cases.length} analysed`,
    "stays on this computer",
  ].join(" · ");
}
