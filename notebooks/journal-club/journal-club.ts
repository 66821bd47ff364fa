import { clubPictures } from "../../src/charts/pictures/club/club-pictures.js";
import type { SectionPicture } from "../../src/charts/section-pictures.js";
import { checkText, type CheckedText } from "../../src/claims/check-text.js";
import type { Appraisal, Periods } from "../../src/findings/appraisal/appraisal.js";
import { clubFindings, firstSliders, type ClubFindings, type Sliders } from "../../src/findings/club/club-findings.js";
import type { PaperCard } from "../../src/findings/series/paper-card.js";
import type { BeliefFindings } from "../../src/findings/vote/belief.js";
import { noHands, type Vote } from "../../src/findings/vote/vote.js";
import { cellsOf } from "../../src/notebook/cells.js";
import { appraisalSection } from "../../src/report/appraisal/appraisal-section.js";
import { clubScreens } from "../../src/report/club/club-screens.js";
import { handout, type Handout } from "../../src/report/club/handout.js";
import type { Screen } from "../../src/report/club/screen.js";
import { caution } from "../../src/report/caution.js";
import type { Section } from "../../src/report/text.js";

/** Every cell of the notebook; those down to `periods` are set by the presenter. */
export interface JournalClub {
  cards: readonly PaperCard[];
  /** Printed under the pictures of the cards. */
  note: string;
  /** Name of the series the evening is about; null: the first. */
  series: string | null;
  /** The grade the room is asked about; null: all. */
  grade: string | null;
  /** What the paper says of itself, as pasted. */
  text: string;
  vote: Vote;
  beliefWidth: BeliefFindings["width"];
  sliders: Sliders;
  level: number;
  takeHome: string;
  appraisal: Appraisal;
  periods: Periods;
  claims: PastedClaims;
  findings: ClubFindings;
  screens: readonly Screen[];
  pictures: readonly SectionPicture[];
  handout: Handout;
  appraised: Section;
  /** Everything the page shows, at one time. */
  evening: Evening;
}

/** The pasted text with its claims; null while it is blank. */
export interface PastedClaims {
  readonly text: string;
  readonly checked: CheckedText | null;
}

export interface Evening {
  readonly findings: ClubFindings;
  readonly screens: readonly Screen[];
  readonly pictures: readonly SectionPicture[];
  readonly handout: Handout;
  readonly appraised: Section;
}

const cell = cellsOf<JournalClub>();

/** What the page shows before anything is typed. */
export interface FirstEvening {
  readonly cards: readonly PaperCard[];
  readonly note: string;
  readonly grade: string | null;
  readonly text: string;
}

/** The notebook, starting from the cards and the text given. */
export const journalClub = ({ cards, note, grade, text }: FirstEvening) => [
  cell("cards", [], () => cards),
  cell("note", [], () => note),
  cell("series", [], () => null),
  cell("grade", [], () => grade),
  cell("text", [], () => text),
  cell("vote", [], () => ({ kind: "hands", before: noHands, after: noHands }) as const),
  cell("beliefWidth", [], () => "hands" as const),
  cell("sliders", [], () => firstSliders),
  cell("level", [], () => 0.95),
  cell("takeHome", [], () => ""),
  cell("appraisal", [], () => ({})),
  cell("periods", [], () => ({ first: null, second: null })),
  cell(
    "findings",
    ["cards", "series", "grade", "vote", "beliefWidth", "sliders", "level"],
    (all, series, asked, vote, beliefWidth, sliders, level) =>
      clubFindings(all, vote, { series, grade: asked, beliefWidth, sliders, level, next: 20 }),
  ),
  cell("claims", ["text"], (pasted) => ({
    text: pasted,
    checked: pasted.trim() === "" ? null : checkText(pasted),
  })),
  cell("screens", ["findings", "takeHome", "claims"], (findings, takeHome, { checked }) =>
    clubScreens(findings, { takeHome, checked }),
  ),
  cell("pictures", ["findings", "note"], (findings, said) => clubPictures(findings, said)),
  cell("handout", ["findings", "takeHome", "claims"], (findings, takeHome, { checked }) =>
    handout(findings, { takeHome, checked, caution }),
  ),
  cell("appraised", ["findings", "appraisal", "periods"], ({ chosen, level }, answers, periods) =>
    appraisalSection(chosen, { answers, periods, level }),
  ),
  cell(
    "evening",
    ["findings", "screens", "pictures", "handout", "appraised"],
    (findings, screens, pictures, printed, appraised) => ({ findings, screens, pictures, handout: printed, appraised }),
  ),
];
