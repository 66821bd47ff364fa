import type { AgreementPage } from "../../findings/agreement/page-findings.js";
import type { Section } from "../text.js";
import { howFarApart } from "./sections/how-far-apart.js";
import { howMany } from "./sections/how-many.js";
import { paper } from "./sections/paper.js";
import { sameGrade } from "./sections/same-grade.js";
import { sameObserver } from "./sections/same-observer.js";
import { whichChange } from "./sections/which-change.js";
import { whyKappa } from "./sections/why-kappa.js";

/** The questions on agreement, in reading order; those that the readings cannot answer are left out. */
export function agreementSections(page: AgreementPage): Section[] {
  return [sameGrade, sameObserver, howFarApart, whichChange, whyKappa, howMany, paper].flatMap((of) => of(page) ?? []);
}
