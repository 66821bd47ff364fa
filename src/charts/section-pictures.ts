import type { Findings } from "../findings/types.js";
import { plainText } from "../report/text.js";
import { sections } from "../report/sections.js";
import type { Drawing } from "./drawing.js";
import { armPicture } from "./pictures/arm-picture.js";
import { comparisonPicture } from "./pictures/comparison-picture.js";
import { complicationsPicture } from "./pictures/complications-picture.js";
import { denominatorsPicture } from "./pictures/denominators-picture.js";
import { gradesPicture } from "./pictures/grades-picture.js";
import { gradingPicture } from "./pictures/grading-picture.js";
import { ladderPicture } from "./pictures/ladder-picture.js";
import { missingPicture } from "./pictures/missing-picture.js";
import { practicePicture } from "./pictures/practice-picture.js";
import { subgroupsPicture } from "./pictures/subgroups-picture.js";
import { tippingPicture } from "./pictures/tipping-picture.js";

/** A picture of one section of the page, ready to be drawn at any width. */
export interface SectionPicture {
  /** Id of the section it belongs to. */
  readonly section: string;
  /** File name without its ending. */
  readonly name: string;
  readonly title: string;
  /** What it shows, for those who cannot see it. */
  readonly description: string;
  readonly caption: string;
  readonly drawing: (width?: number) => Drawing;
}

export type PictureMaker = (findings: Findings) => Pick<SectionPicture, "name" | "caption" | "drawing"> | null;

const makers: Readonly<Record<string, readonly PictureMaker[]>> = {
  who: [denominatorsPicture],
  "how-often": [gradesPicture],
  grading: [gradingPicture],
  treatment: [comparisonPicture],
  ladder: [ladderPicture],
  where: [subgroupsPicture],
  wrong: [complicationsPicture],
  arm: [armPicture],
  practice: [practicePicture],
  missing: [missingPicture, tippingPicture],
};

/** The pictures of the page, in reading order; a section with nothing to draw has none. */
export function sectionPictures(findings: Findings): SectionPicture[] {
  const note =
    findings.plan.note === undefined ? "" : ` ${findings.plan.note[0]!.toUpperCase()}${findings.plan.note.slice(1)}.`;
  return sections(findings).flatMap(({ id, question, answer }) => {
    const description = answer.map(plainText).join(" ");
    return (makers[id] ?? []).flatMap((maker) => {
      const picture = maker(findings);
      if (picture === null) return [];
      return [{ section: id, title: question, description, ...picture, caption: `${picture.caption}${note}` }];
    });
  });
}
