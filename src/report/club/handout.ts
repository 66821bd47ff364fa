import { overall } from "../../claims/review-comments.js";
import type { ClubFindings } from "../../findings/club/club-findings.js";
import { levelText } from "../number-text.js";
import { bandText, countText, shareText, casesOf } from "../series/series-text.js";
import type { TextTable } from "../text.js";
import { shiftLines } from "../vote/shift-text.js";
import { askedText } from "../vote/vote-text.js";
import { slipText, tallyText } from "./claim-check-screen.js";
import type { Typed } from "./club-screens.js";
import { claim, eitherWay } from "./evidence-screens.js";
import { plainText } from "../text.js";

/** One printed page of the evening. */
export interface Handout {
  readonly title: string;
  readonly lines: readonly string[];
  readonly card: TextTable;
  readonly voted: readonly string[];
  readonly takeHome: string;
  readonly caution: string;
}

/** Series that leave the handout on one page. */
const most = 8;
const mostSlips = 1;

export function handout(
  findings: ClubFindings,
  { takeHome, checked, caution }: Typed & { readonly caution: string },
): Handout {
  const { chosen, series, level } = findings;
  const listed = series.series.filter((one, i) => i < most || one === chosen);
  const left = series.series.length - listed.length;
  return {
    title: chosen === null ? "Journal club" : `Journal club: ${chosen.card.name}`,
    lines: [...[...claim(findings).answer, ...eitherWay(findings)].map(plainText), ...checkedLines(checked)],
    card: {
      caption: `The series, ${levelText(level)} intervals in %; the grade mix of ${series.mixOf}`,
      head: ["Series", "Succeeded", "Share", "With one grade mix"],
      rows: listed.map((one) => [
        one.card.name,
        countText(one.crude),
        one.crude.estimate === null ? "" : bandText(one.crude),
        one.standardised.estimate === null
          ? "cannot be said"
          : shareText(one.standardised.estimate, one.standardised.interval, casesOf(one)),
      ]),
      notes: left === 0 ? [] : [`and ${left} more`],
    },
    voted: [`Asked about ${askedText(findings)}.`, ...shiftLines(findings.vote)],
    takeHome: takeHome.trim(),
    caution,
  };
}

/** How the paper's own numbers fared, and its first slip; nothing where no text was pasted. */
function checkedLines(checked: Typed["checked"]): string[] {
  if (checked === null) return [];
  const slips = checked.claims.filter((one) => overall(one) === "fails").slice(0, mostSlips);
  return [`Its text: ${tallyText(checked)}`, ...slips.map(slipText)];
}
