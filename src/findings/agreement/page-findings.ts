import type { GradedReadings, Readings } from "../../cases/readings/types.js";
import { regradingChances, type RegradingChances } from "../../stats/regrading/regrading-chances.js";
import { cutReadings } from "./cut-readings.js";
import type { GradeFindings } from "./grade-findings.js";
import { wantedSize, type WantedSize } from "./wanted-size.js";
import { measurementFindings, type MeasurementFindings } from "./measurement-findings.js";

/** What the reader chose on the page. */
export interface PageChoices {
  /** Places of the two columns that are looked at. */
  readonly pair: readonly [number, number];
  readonly cuts: readonly number[];
  /** Place of the first grade that is treated differently. */
  readonly treatedFrom: number;
  /** Share of the treated grades that the slider shows; null for the one found. */
  readonly prevalence: number | null;
  /** The next study: kappa that is expected (null for the one found) and the wanted full width of its interval. */
  readonly plan: { readonly kappa: number | null; readonly width: number };
  readonly level: number;
}

/** Chances of another grade for each radiograph that the first column measured. */
export interface RegradingFindings {
  readonly chances: RegradingChances;
  /** Radiograph (place) of each case in `chances`. */
  readonly images: readonly number[];
  readonly error: number;
}

/** Everything the page on agreement shows, before any rounding. */
export interface AgreementPage {
  readonly readings: Readings;
  readonly graded: GradedReadings;
  readonly grades: GradeFindings;
  readonly measured: MeasurementFindings | null;
  readonly regrading: RegradingFindings | null;
  /** What the next study needs as the reader plans it; null where nothing can be planned. */
  readonly wanted: WantedSize | null;
  readonly choices: PageChoices;
}

/** Grades as they are judged: as recorded, or cut from the measurements. */
export function gradedOf(readings: Readings, cuts: readonly number[]): GradedReadings {
  return readings.kind === "grades" ? readings : cutReadings(readings, cuts);
}

/** Puts the page together from graded findings (worked out apart, as they resample) and the measurements. */
export function pageFindings(
  readings: Readings,
  graded: GradedReadings,
  grades: GradeFindings,
  choices: PageChoices,
): AgreementPage {
  const measured = readings.kind === "measurements" ? measurementFindings(readings, choices) : null;
  const regrading = regradingOf(readings, measured, choices);
  return { readings, graded, grades, measured, regrading, wanted: wantedSize(grades.plan, measured, choices), choices };
}

function regradingOf(
  readings: Readings,
  measured: MeasurementFindings | null,
  { pair, cuts, treatedFrom, level }: PageChoices,
): RegradingFindings | null {
  const error = measured?.error.agreement.estimate ?? null;
  if (error === null || error === 0) return null;
  const images = readings.readings.flatMap((row, image) => (row[pair[0]] === null ? [] : [image]));
  if (images.length === 0) return null;
  const values = images.map((image) => readings.readings[image]![pair[0]]!);
  const treatments = [...cuts.keys(), cuts.length].map((grade) => (grade < treatedFrom ? "below" : "from there"));
  return { chances: regradingChances(values, { cuts, error, treatments, level }), images, error };
}
