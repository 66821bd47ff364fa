import { agreementPictures } from "../../src/charts/agreement-pictures.js";
import type { SectionPicture } from "../../src/charts/section-pictures.js";
import { readReadings } from "../../src/cases/readings/read-readings.js";
import type { GradedReadings, Readings } from "../../src/cases/readings/types.js";
import type { RawSheet } from "../../src/cases/types.js";
import type { GradeFindings } from "../../src/findings/agreement/grade-findings.js";
import {
  gradedOf,
  pageFindings,
  type AgreementPage,
  type PageChoices,
} from "../../src/findings/agreement/page-findings.js";
import type { AgreementOptions } from "../../src/findings/agreement/table-findings.js";
import { cellsOf } from "../../src/notebook/cells.js";
import { agreementSections } from "../../src/report/agreement/agreement-sections.js";
import { allPairs } from "../../src/stats/agreement/all-pairs.js";
import type { Section } from "../../src/report/text.js";

/** Works out the graded findings, in a worker or at once. */
export type GradeWork = (graded: GradedReadings, options: AgreementOptions) => Promise<GradeFindings>;

export interface Page {
  readonly found: AgreementPage;
  readonly sections: readonly Section[];
  readonly pictures: readonly SectionPicture[];
}

/** Every cell of the notebook; the first nine are set by the reader. */
export interface Agreement {
  sheet: RawSheet;
  /** Shown files are invented as long as the demo is shown. */
  invented: boolean;
  /** Null: the first two observers on one occasion. */
  pair: readonly [number, number] | null;
  cuts: readonly number[];
  treatedFrom: number;
  prevalence: number | null;
  /** Kappa that the next study expects; null: as found. */
  planKappa: number | null;
  /** Wanted full width of its interval. */
  planWidth: number;
  level: number;
  readings: Readings;
  graded: GradedReadings;
  grades: GradeFindings;
  page: Page;
}

/** Cut-points of the demo: a tenth, a third and two thirds of the shaft width, in per cent. */
export const demoCuts = [10, 33, 67] as const;

const cell = cellsOf<Agreement>();

/** The notebook, starting from a file of readings. */
export const agreement = (sheet: RawSheet, work: GradeWork, invented: boolean) => [
  cell("sheet", [], () => sheet),
  cell("invented", [], () => invented),
  cell("pair", [], () => null),
  cell("cuts", [], () => demoCuts),
  cell("treatedFrom", [], () => 3),
  cell("prevalence", [], () => null),
  cell("planKappa", [], () => null),
  cell("planWidth", [], () => 0.2),
  cell("level", [], () => 0.95),
  cell("readings", ["sheet"], (given) => readReadings(given)),
  cell("graded", ["readings", "cuts"], (readings, cuts) => gradedOf(readings, cuts)),
  cell("grades", ["graded", "level"], (graded, level) => work(graded, { level, resamples: 2000, seed: 1 })),
  cell(
    "page",
    [
      "readings",
      "graded",
      "grades",
      "pair",
      "cuts",
      "treatedFrom",
      "prevalence",
      "planKappa",
      "planWidth",
      "level",
      "invented",
    ],
    (readings, graded, grades, pair, cuts, treatedFrom, prevalence, kappa, width, level, isInvented) => {
      const choices: PageChoices = {
        pair: pair ?? firstPair(readings),
        cuts,
        treatedFrom: Math.min(treatedFrom, graded.grades.length - 1),
        prevalence,
        plan: { kappa, width },
        level,
      };
      const found = pageFindings(readings, graded, grades, choices);
      const note = isInvented ? " Invented readings." : "";
      return { found, sections: agreementSections(found), pictures: agreementPictures(found, note) };
    },
  ),
];

/** Two observers on the same occasion, else the first two columns. */
function firstPair({ columns }: Readings): readonly [number, number] {
  const pair = allPairs(columns.length).find(
    ([a, b]) => columns[a]!.rater !== columns[b]!.rater && columns[a]!.occasion === columns[b]!.occasion,
  );
  return pair ?? [0, 1];
}
