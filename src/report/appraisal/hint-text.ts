import type { AppraisalItem } from "../../findings/appraisal/appraisal.js";
import type { AppraisalHints } from "../../findings/appraisal/appraisal-hints.js";
import { counted, listText, percentText } from "../number-text.js";

/** What the counts say to an item; empty where they say nothing. */
export function hintText(item: AppraisalItem, { loss, overlap, baseline }: AppraisalHints): string {
  switch (item) {
    case "loss":
      return loss === null
        ? "The card states no loss to count."
        : `Counted: ${loss.successes} of ${loss.cases} lost (${percentText(loss.estimate, loss.cases)}).`;
    case "period":
      return overlap === null
        ? "Type the years of both groups to count."
        : `Counted: ${overlap.shared} of ${counted(overlap.all, "year")} shared by both groups.`;
    case "baseline":
      return baseline === null
        ? "The card does not tell two techniques apart by grade."
        : `Counted: ${baseline.map(groupText).join("; ")}.`;
    default:
      return "";
  }
}

function groupText({ technique, grades }: NonNullable<AppraisalHints["baseline"]>[number]): string {
  const shares = grades.map(({ grade, share }) => `grade ${grade} ${percentText(share.estimate, share.cases)}`);
  return `${technique} ${listText(shares)}`;
}
