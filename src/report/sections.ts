import type { Findings } from "../findings/types.js";
import { betterWithPractice } from "./sections/better-with-practice.js";
import { gradedTheSame } from "./sections/graded-the-same.js";
import { howFar } from "./sections/how-far.js";
import { howOften } from "./sections/how-often.js";
import { howTheArmMoves } from "./sections/how-the-arm-moves.js";
import { treatmentOrGrade } from "./sections/treatment-or-grade.js";
import { wentWrong } from "./sections/went-wrong.js";
import { twoLimbs } from "./sections/two-limbs.js";
import { whatElse } from "./sections/what-else.js";
import { whereNot } from "./sections/where-not.js";
import { who } from "./sections/who.js";
import { whoIsMissing } from "./sections/who-is-missing.js";
import type { Section } from "./text.js";

/** The page of questions, in reading order. */
export function sections(findings: Findings): Section[] {
  return [
    who,
    howOften,
    gradedTheSame,
    treatmentOrGrade,
    howFar,
    whereNot,
    wentWrong,
    howTheArmMoves,
    betterWithPractice,
    whatElse,
    twoLimbs,
    whoIsMissing,
  ].map((section) => section(findings));
}
