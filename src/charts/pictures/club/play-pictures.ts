import type { ClubFindings } from "../../../findings/club/club-findings.js";
import type { BandedRate } from "../../../findings/series/series-findings.js";
import { kappaText } from "../../../report/club/play-screens.js";
import { decimalText, levelText } from "../../../report/number-text.js";
import { bandText, countText } from "../../../report/series/series-text.js";
import type { CaseMark } from "../../case-mark.js";
import { caseMarks, type CaseMarksRow } from "../../case-marks.js";
import { markRows } from "../../mark-rows.js";
import { tippingMarks } from "../../tipping-marks.js";
import { tippingCaption } from "../tipping-picture.js";
import type { ClubPicture } from "./club-picture.js";
import { sized } from "./vote-pictures.js";

export function widthPicture({ widthPlay, level }: ClubFindings): ClubPicture {
  const rows = [rateRow("Four in five", widthPlay.rate)];
  return {
    name: "interval-width",
    caption: `Each mark is one case. Bands: 50% and ${levelText(level)} intervals.`,
    drawing: (width) => caseMarks(rows, sized(width)),
  };
}

export function mixPlayPictures({ mixPlay, level }: ClubFindings): ClubPicture[] {
  const rows = mixPlay.teams.flatMap(({ name, low, high, all }) => [
    rateRow(`${name}, all`, all),
    ...(low === null ? [] : [rateRow("I and II", low)]),
    ...(high === null ? [] : [rateRow("III and IV", high)]),
  ]);
  return [
    {
      name: "grade-mix",
      caption: `Two invented teams; each mark is one case. Bands: 50% and ${levelText(level)} intervals.`,
      drawing: (width) => caseMarks(rows, sized(width)),
    },
  ];
}

export function lostPictures({ lostPlay, chosen, tipping }: ClubFindings): ClubPicture[] {
  const { either, reported, lost } = lostPlay;
  if (either === null || reported.estimate === null) return [];
  const rows = [
    rateRow(`${chosen?.card.name ?? ""}, as reported`, reported),
    { ...rateRow("all lost failed", either.worst), marks: marksOf(reported, lost, "failure") },
    { ...rateRow("all lost succeeded", either.best), marks: marksOf(reported, lost, "success") },
  ];
  return [
    {
      name: "lost-either-way",
      caption: "Each mark is one case; dashed: lost, its outcome supposed.",
      drawing: (width) => caseMarks(rows, sized(width)),
    },
    ...("estimate" in tipping
      ? []
      : [
          {
            name: "tipping",
            caption: tippingCaption(tipping),
            drawing: (width?: number) => tippingMarks(tipping, sized(width)),
          },
        ]),
  ];
}

export function prevalencePictures(findings: ClubFindings): ClubPicture[] {
  const { bothHigh, bothLow, differ, agreement, kappa } = findings.prevalencePlay;
  const marks: CaseMark[] = [
    ...Array.from({ length: bothHigh }, () => ({ outcome: "success", technique: "closed" }) as const),
    ...Array.from({ length: differ }, () => ({ outcome: "failure", technique: "open", crossed: true }) as const),
    ...Array.from({ length: bothLow }, () => ({ outcome: "failure", technique: "closed" }) as const),
  ];
  const none = { band: null };
  const { estimate, interval, inner } = agreement;
  const rows = [
    { label: "Radiographs", count: `${bothHigh} both high`, note: `${bothLow} both low`, groups: [marks], ...none },
    {
      label: "Agreement",
      count: countText(agreement),
      note: bandText(agreement),
      groups: [],
      band: { estimate, ...interval, innerLow: inner.low, innerHigh: inner.high },
    },
    {
      label: "Kappa",
      count: kappaText(findings),
      note:
        kappa.estimate === null
          ? ""
          : `(${decimalText(kappa.interval.low, 2)} to ${decimalText(kappa.interval.high, 2)})`,
      groups: [],
      band:
        kappa.estimate === null
          ? null
          : { estimate: kappa.estimate, ...kappa.interval, innerLow: kappa.estimate, innerHigh: kappa.estimate },
    },
  ];
  const axis = { domain: [-0.25, 1], ticks: [0, 0.25, 0.5, 0.75, 1], format: ".2f" } as const;
  return [
    {
      name: "kappa-and-prevalence",
      caption:
        "Sixty invented radiographs: filled, both observers say high; open, both say low; crossed squares, they differ. Bands run on beyond the axis where cut.",
      drawing: (width) => markRows(rows, { ...sized(width), axis }),
    },
  ];
}

function marksOf({ successes, cases }: BandedRate, lost: number, supposed: "success" | "failure"): CaseMark[] {
  const seen = Array.from({ length: cases }, (_, i): CaseMark => ({ outcome: i < successes ? "success" : "failure" }));
  return [...seen, ...Array.from({ length: lost }, (): CaseMark => ({ outcome: supposed, supposed: true }))];
}

function rateRow(label: string, rate: BandedRate): CaseMarksRow {
  const { successes, cases, estimate, interval, inner } = rate;
  const marks = Array.from({ length: cases }, (_, i): CaseMark => ({ outcome: i < successes ? "success" : "failure" }));
  return { label, count: countText(rate), note: bandText(rate), marks, estimate, interval, inner };
}
