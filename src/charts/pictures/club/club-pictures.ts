import type { ClubFindings } from "../../../findings/club/club-findings.js";
import { clubScreens } from "../../../report/club/club-screens.js";
import { levelText } from "../../../report/number-text.js";
import { countText } from "../../../report/series/series-text.js";
import { plainText } from "../../../report/text.js";
import { caseMarks } from "../../case-marks.js";
import type { CaseMark } from "../../case-mark.js";
import { markRows } from "../../mark-rows.js";
import { seriesPictures } from "../series/series-pictures.js";
import { seriesRow } from "../series/series-row.js";
import type { SectionPicture } from "../../section-pictures.js";
import type { ClubPicture } from "./club-picture.js";
import { lostPictures, mixPlayPictures, prevalencePictures, widthPicture } from "./play-pictures.js";
import { beliefPictures, firstVotePictures, secondVotePictures, sized } from "./vote-pictures.js";

const makers: Readonly<Record<string, (findings: ClubFindings, note: string) => readonly ClubPicture[]>> = {
  "first-vote": firstVotePictures,
  claim: claimPictures,
  sure: (findings) => [...nextPictures(findings), widthPicture(findings)],
  who: lostPictures,
  fair: mixPlayPictures,
  beside: ({ series }, note) =>
    ["mix", "grades"].flatMap((wanted) => seriesPictures(series, note).filter(({ section }) => section === wanted)),
  grading: prevalencePictures,
  "second-vote": secondVotePictures,
  belief: beliefPictures,
  "take-home": claimPictures,
};

/** Screens that show the cards, so that the note on where these come from stands under them. */
const ofCards = ["claim", "sure", "who", "belief", "take-home"];

/** The pictures of the evening, by screen. */
export function clubPictures(findings: ClubFindings, note = ""): SectionPicture[] {
  return clubScreens(findings).flatMap(({ id, question, answer }) =>
    (makers[id]?.(findings, note) ?? []).map((picture) => ({
      ...picture,
      section: id,
      title: question,
      description: answer.map(plainText).join(" "),
      caption: ofCards.includes(id) ? [picture.caption, note].filter(Boolean).join(" ") : picture.caption,
    })),
  );
}

function claimPictures({ chosen, level }: ClubFindings): ClubPicture[] {
  if (chosen === null) return [];
  const rows = [
    seriesRow("All grades", chosen.crude, chosen),
    ...chosen.grades.map(({ grade, rate }) => seriesRow(`Grade ${grade}`, rate, chosen)),
  ];
  return [
    {
      name: "claim",
      caption: `${chosen.card.name}: each mark is one case, filled when it succeeded. Bands: 50% and ${levelText(level)} intervals.`,
      drawing: (width) => caseMarks(rows, sized(width)),
    },
  ];
}

function nextPictures({ series, chosen, level }: ClubFindings): ClubPicture[] {
  const rows = series.series.flatMap(({ card, next, crude }) => {
    if (next.estimate === null || crude.estimate === null) return [];
    const { low, high } = next.interval;
    const marks = Array.from({ length: next.cases }, (_, i): CaseMark => {
      if (i >= low && i < high) return { outcome: "failure", technique: "assisted" };
      return { outcome: i < low ? "success" : "failure" };
    });
    const count = `${low} to ${high} of ${next.cases}`;
    return [{ label: card.name, count, note: `from ${countText(crude)}`, groups: [marks], band: null }];
  });
  if (rows.length === 0 || chosen === null) return [];
  return [
    {
      name: "next-cases",
      caption: `The next cases of each series, if they are like its own. Filled circles: successes to count on; open diamonds: could go either way; rings: failures to count on (${levelText(level)}).`,
      drawing: (width) => markRows(rows, sized(width)),
    },
  ];
}
