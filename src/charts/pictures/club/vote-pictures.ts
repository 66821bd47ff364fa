import type { ClubFindings } from "../../../findings/club/club-findings.js";
import type { Poll, VoteFindings } from "../../../findings/vote/vote-findings.js";
import { levelText, percentRangeText, percentText } from "../../../report/number-text.js";
import { stepTexts } from "../../../report/vote/vote-text.js";
import { beliefCurves } from "../../belief-curves.js";
import type { CaseMark } from "../../case-mark.js";
import { handHistogram, type HandRow } from "../../hand-histogram.js";
import { markRows, type MarkRow } from "../../mark-rows.js";
import type { ClubPicture } from "./club-picture.js";

const histogramText = {
  steps: stepTexts.map((text) => text.replace("%", "")),
  axis: "expected success, %",
};

export function firstVotePictures({ vote }: ClubFindings): ClubPicture[] {
  return [
    {
      name: "first-vote",
      caption: "Each ring is one hand.",
      drawing: (width) => handHistogram([handRow("Before", vote.before, false)], histogramText, sized(width)),
    },
  ];
}

export function secondVotePictures({ vote }: ClubFindings): ClubPicture[] {
  const rows = wouldRows(vote);
  return [
    {
      name: "vote-shift",
      caption: "Each mark is one hand: open before, filled after.",
      drawing: (width) =>
        handHistogram(
          [handRow("Before", vote.before, false), handRow("After", vote.after, true)],
          histogramText,
          sized(width),
        ),
    },
    ...(rows.some(({ groups }) => groups[0]!.length > 0)
      ? [
          {
            name: "vote-would",
            caption:
              vote.paired === null
                ? "Would you do it? Filled: yes; ring: no."
                : "Would you do it? Filled: yes; ring: no; crossed: changed. One voter stands in the same place in both rows.",
            drawing: (width?: number) => markRows(rows, sized(width)),
          },
        ]
      : []),
  ];
}

export function beliefPictures({ belief, asked }: ClubFindings): ClubPicture[] {
  const { update } = belief;
  if ("because" in update || asked.estimate === null) return [];
  const row = (label: string, of: "before" | "after") => ({
    label,
    count: percentText(update[of].mean, 1),
    note: `(${percentRangeText(update[of].interval, 1)})`,
    curve: belief[of],
    mean: update[of].mean,
    interval: update[of].interval,
  });
  const rows = { before: row("The room's guess", "before"), after: row("With the paper", "after") };
  return [
    {
      name: "belief",
      caption: `Dashed: a beta curve of the room's guess; full: after ${asked.successes} of ${asked.cases}. Bands hold ${levelText(update.level)} of each.`,
      drawing: (width) => beliefCurves(rows, sized(width)),
    },
  ];
}

export const sized = (width: number | undefined): { readonly width?: number } => (width === undefined ? {} : { width });

function handRow(name: string, { mean, expected }: Poll, filled: boolean): HandRow {
  const label = mean === null ? `${name}: no hand yet` : `${name}: mean ${percentText(mean, 1)}`;
  return { label, hands: expected, filled };
}

function wouldRows({ before, after, paired }: VoteFindings): MarkRow[] {
  const row = (label: string, { yes, no }: Poll, marks: readonly CaseMark[]): MarkRow => ({
    label,
    count: yes + no === 0 ? "no answer" : `${yes} of ${yes + no} yes`,
    note: "",
    groups: [marks],
    band: null,
  });
  if (paired === null)
    return [row("Before", before, hands(before.yes, before.no)), row("After", after, hands(after.yes, after.no))];
  const { both, firstOnly, secondOnly, neither } = paired.would.voters;
  const order = [
    ...both.map(() => [true, true] as const),
    ...firstOnly.map(() => [true, false] as const),
    ...secondOnly.map(() => [false, true] as const),
    ...neither.map(() => [false, false] as const),
  ];
  const marks = (at: 0 | 1): CaseMark[] =>
    order.map((said) => ({ outcome: said[at] ? "success" : "failure", crossed: at === 1 && said[0] !== said[1] }));
  return [row("Before", before, marks(0)), row("After", after, marks(1))];
}

function hands(yes: number, no: number): CaseMark[] {
  return Array.from({ length: yes + no }, (_, i) => ({ outcome: i < yes ? "success" : "failure" }));
}
