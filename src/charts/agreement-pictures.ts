import type { AgreementPage } from "../findings/agreement/page-findings.js";
import { agreementSections } from "../report/agreement/agreement-sections.js";
import { chosenPair, columnName } from "../report/agreement/sections/page-words.js";
import { prevalenceOf } from "../report/agreement/sections/why-kappa.js";
import { decimalText, percentText } from "../report/number-text.js";
import { plainText } from "../report/text.js";
import { kappaAtPrevalence } from "../stats/agreement/kappa-at-prevalence.js";
import { agreementMap } from "./agreement-map.js";
import { differencePlot, type DifferencePoint } from "./difference-plot.js";
import { prevalenceCurve } from "./prevalence-curve.js";
import { raterStrips } from "./rater-strips.js";
import type { SectionPicture } from "./section-pictures.js";

type Picture = Omit<SectionPicture, "title" | "description">;

/** The pictures of the page on agreement, in reading order. */
export function agreementPictures(page: AgreementPage, note: string): SectionPicture[] {
  const sections = new Map(agreementSections(page).map((section) => [section.id, section]));
  return [mapPicture, differencePicture, stripPicture, prevalencePicture].flatMap((of) => {
    const picture = of(page);
    const section = picture && sections.get(picture.section);
    if (!picture || !section) return [];
    const description = section.answer.map(plainText).join(" ");
    return [{ ...picture, title: section.question, description, caption: `${picture.caption}${note}` }];
  });
}

function mapPicture(page: AgreementPage): Picture {
  const { crossTable, raters } = chosenPair(page);
  const [first, second] = [columnName(page, raters[0]), columnName(page, raters[1])];
  const cells = crossTable.members.map((row) =>
    row.map((cell) => cell.map((place) => page.readings.radiographs[place]!.id)),
  );
  return {
    section: "same",
    name: "agreement-map",
    caption: `Every mark a radiograph: filled where ${first} and ${second} gave the same grade, a ring where not; numbers are counts.`,
    drawing: (width) =>
      agreementMap(cells, { first, second, grades: page.grades.grades }, width === undefined ? {} : { width }),
  };
}

function differencePicture(page: AgreementPage): Picture | null {
  const { pair } = page.choices;
  const found = page.measured?.pairs.find(({ raters }) => raters[0] === pair[0] && raters[1] === pair[1])?.limits;
  if (!found || !("bias" in found)) return null;
  const points = page.readings.readings.flatMap((row, place): DifferencePoint[] => {
    const [a, b] = [row[pair[0]]!, row[pair[1]]!];
    return a === null || b === null
      ? []
      : [{ id: page.readings.radiographs[place]!.id, mean: (a + b) / 2, difference: a - b }];
  });
  const [first, second] = pair.map((place) => columnName(page, place));
  const line = (value: number, { low, high }: { low: number; high: number }, name: string) => ({
    value,
    low,
    high,
    text: `${name} ${decimalText(value, 1)}`,
  });
  const lines = {
    lower: line(found.lower.estimate, found.lower.exact, "lower limit"),
    bias: line(found.bias.estimate, found.bias.interval, "mean"),
    upper: line(found.upper.estimate, found.upper.exact, "upper limit"),
  };
  const text = { mean: `mean of ${first} and ${second}`, difference: `${first} less ${second}` };
  return {
    section: "far",
    name: "differences",
    caption:
      "Difference against mean, every mark a radiograph; bands are intervals of the mean difference and of the limits.",
    drawing: (width) => differencePlot(points, lines, text, width === undefined ? {} : { width }),
  };
}

function stripPicture(page: AgreementPage): Picture | null {
  if (page.regrading === null) return null;
  const { error } = page.regrading;
  const strips = page.readings.columns.map(({ name }, column) => ({
    label: name,
    readings: page.readings.readings.flatMap((row, place) =>
      row[column] === null ? [] : [{ id: page.readings.radiographs[place]!.id, value: row[column]! }],
    ),
  }));
  const text = { grades: page.grades.grades, axis: "measured", error };
  return {
    section: "change",
    name: "rater-strips",
    caption:
      "Measurements of each reading; lines are cut-points, bands 1.96 errors of measurement about them, rings radiographs within.",
    drawing: (width) => raterStrips(strips, page.choices.cuts, text, width === undefined ? {} : { width }),
  };
}

function prevalencePicture(page: AgreementPage): Picture | null {
  const found = prevalenceOf(page);
  if (found === null) return null;
  const curve = Array.from({ length: 199 }, (_, k) => (k + 1) / 200).flatMap((prevalence) => {
    const { estimate } = kappaAtPrevalence(found.agreement, prevalence);
    return estimate === null || estimate < -1 ? [] : [{ prevalence, kappa: estimate }];
  });
  const point = (prevalence: number, kappa: number | null) => (kappa === null ? null : { prevalence, kappa });
  const given = {
    agreement: found.agreement,
    found: point(found.found, found.foundKappa),
    shown: point(found.shown, found.shownKappa),
  };
  const text = {
    axis: `share of readings that are ${found.from} or above`,
    agreement: `agreement ${percentText(found.agreement, found.n)}, unchanged`,
    kappa: "kappa",
    found: "found here",
  };
  return {
    section: "why",
    name: "kappa-and-prevalence",
    caption:
      "Kappa over how common the grade is, at the agreement found; the ring is this study, the dot where the slider stands.",
    drawing: (width) => prevalenceCurve(curve, given, text, width === undefined ? {} : { width }),
  };
}
