import type { ClubFindings } from "../../findings/club/club-findings.js";
import type { CardFindings } from "../../findings/series/series-findings.js";
import type { LostPlay } from "../../findings/club/lost-play.js";
import { counted, levelText, percentRangeText, percentText } from "../number-text.js";
import { bandText, countText } from "../series/series-text.js";
import { seriesSections } from "../series/series-sections.js";
import { askedText } from "../vote/vote-text.js";
import { tippingTable, tippingText } from "../tipping-text.js";
import type { Paragraph, TextTable } from "../text.js";
import type { Screen } from "./screen.js";

const noSeries = "No series is chosen: put one on its card below.";

/** "31 of 37 limbs: 84% (95% CI 69 to 92)". */
function reported({ card, crude }: CardFindings, level: number): string {
  if (crude.estimate === null) return `${countText(crude)}: ${crude.because}`;
  const unit = card.unit === "not stated" ? "cases (limbs or children: not stated)" : card.unit;
  const { cases, estimate, interval } = crude;
  return `${countText(crude)} ${unit}: ${percentText(estimate, cases)} (${levelText(level)} CI ${percentRangeText(interval, cases)})`;
}

export function claim({ chosen, level }: ClubFindings): Screen {
  const answer: Paragraph[] =
    chosen === null
      ? [[noSeries]]
      : [
          [`${chosen.card.name} reports ${reported(chosen, level)}.`],
          [`Success: ${chosen.card.definition ?? "not stated"}. Follow-up: ${chosen.card.followUp ?? "not stated"}.`],
          [`Lost: ${chosen.card.lost ?? "not stated"}. Complications: ${chosen.card.complications ?? "not stated"}.`],
        ];
  const grades = chosen?.grades ?? [];
  return {
    id: "claim",
    question: "What does the paper claim?",
    answer,
    cautions: [],
    tables: [
      {
        caption: `${chosen?.card.name ?? "No series"}, as reported, share and ${levelText(level)} Wilson interval, %`,
        head: ["Grade", "Succeeded", "Share"],
        rows: grades.map(({ grade, rate }) => [grade, countText(rate), rate.estimate === null ? "" : bandText(rate)]),
        notes: [],
      },
    ],
    notes: ["Say the unit and the definition of success before the number.", "What is not stated is a finding too."],
    minutes: 1,
  };
}

export function sure(findings: ClubFindings): Screen {
  const { asked, chosen, widthPlay, level } = findings;
  const next = chosen?.next;
  const lines: Paragraph[] = [];
  if (asked.estimate === null) lines.push([`No interval: ${asked.because}.`]);
  else
    lines.push([
      `${countText(asked)} (${askedText(findings)}) is compatible with ${percentRangeText(asked.interval, asked.cases).replace(" to ", "% to ")}% (${levelText(level)}).`,
    ]);
  if (chosen && next && next.estimate !== null)
    lines.push([
      `Of the next ${next.cases} cases like those of ${chosen.card.name}, ${next.interval.low} to ${next.interval.high} would succeed.`,
    ]);
  const { rate, width, fourfold } = widthPlay;
  lines.push([
    `Slider: ${countText(rate)} spans ${points(width)} points; four times the cases (${fourfold.cases}) still span ${points(fourfold.width)}.`,
  ]);
  return {
    id: "sure",
    question: "How sure is it?",
    answer: lines,
    cautions: [["More cases narrow the interval; they do not mend how the cases were chosen."]],
    tables: [],
    notes: ["Move the slider of cases from 5 up. Halving the width asks for about four times the cases."],
    minutes: 2,
  };
}

export function who(findings: ClubFindings): Screen {
  const { lostPlay, chosen, level, tipping } = findings;
  const { lost, reported, either } = lostPlay;
  const stated =
    chosen === null ? noSeries : chosen.card.lost === null ? "The paper does not state how many were lost." : null;
  return {
    id: "who",
    question: "Who is in it?",
    answer: [
      ...(stated === null ? [] : [[stated]]),
      ...followed(chosen),
      ...eitherWay(findings),
      ...("estimate" in tipping ? [] : [[tippingText(tipping)]]),
    ],
    cautions: [["These are the ends of what is possible, not what happened to those who were lost."]],
    tables: [
      ...(either === null ? [] : [eitherTable(reported, { ...either, lost, level })]),
      ...("estimate" in tipping ? [] : [tippingTable(tipping)]),
    ],
    notes: ["Ask who would not come back: those who are well, or those who went elsewhere?"],
    minutes: 2,
  };
}

/** Who of the eligible could be judged, where the paper states both. */
function followed(chosen: ClubFindings["chosen"]): Paragraph[] {
  if (chosen === null || chosen.card.lost === null || chosen.crude.estimate === null) return [];
  const { cases } = chosen.crude;
  const eligible = cases + chosen.card.lost;
  if (eligible === 0) return [];
  return [[`${cases} of ${eligible} eligible cases were followed (${percentText(cases / eligible, eligible)}).`]];
}

/** What the lost could have made of the rate; nothing without a reported count. */
export function eitherWay({ lostPlay: { lost, reported, either } }: ClubFindings): Paragraph[] {
  if (either === null || reported.estimate === null) return [];
  return [
    [
      `With ${counted(lost, "lost case")} counted either way, ${countText(reported)} (${percentText(reported.estimate, reported.cases)}) becomes anything from ${percentText(either.worst.estimate, either.worst.cases)} to ${percentText(either.best.estimate, either.best.cases)}.`,
    ],
  ];
}

function eitherTable(
  reported: LostPlay["reported"],
  { worst, best, lost, level }: NonNullable<LostPlay["either"]> & { readonly lost: number; readonly level: number },
): TextTable {
  return {
    caption: `Success with ${counted(lost, "lost case")} counted either way, ${levelText(level)} Wilson interval, %`,
    head: ["", "Succeeded", "Share"],
    rows: [
      ["as reported", countText(reported), reported.estimate === null ? "" : bandText(reported)],
      ["all lost failed", countText(worst), bandText(worst)],
      ["all lost succeeded", countText(best), bandText(best)],
    ],
    notes: [],
  };
}

export function beside({ series }: ClubFindings): Screen {
  const [grades, mix] = ["grades", "mix"].map((id) => seriesSections(series).find((section) => section.id === id)!);
  return {
    ...mix!,
    id: "beside",
    question: "Does it hold beside the other series?",
    tables: [...grades!.tables, ...mix!.tables],
    notes: ["Look along one grade first, then at the rates with one grade mix."],
    minutes: 2,
  };
}

const points = (width: number): string => percentText(width, 1).replace("%", "");
