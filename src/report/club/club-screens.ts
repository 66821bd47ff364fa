import type { CheckedText } from "../../claims/check-text.js";
import type { ClubFindings } from "../../findings/club/club-findings.js";
import { shiftLines } from "../vote/shift-text.js";
import { claimCheck } from "./claim-check-screen.js";
import type { Screen } from "./screen.js";
import { beside, claim, eitherWay, sure, who } from "./evidence-screens.js";
import { fair, grading } from "./play-screens.js";
import { beliefScreen, firstVote, secondVote } from "./vote-screens.js";

/** What was typed besides the counts. */
export interface Typed {
  readonly takeHome: string;
  /** The paper's own text, checked; null while none was pasted. */
  readonly checked: CheckedText | null;
}

/** The evening, one question a screen, in twenty minutes. */
export function clubScreens(findings: ClubFindings, typed: Typed = { takeHome: "", checked: null }): Screen[] {
  const of = (screens: readonly ((all: ClubFindings) => Screen)[]): Screen[] =>
    screens.map((screen) => screen(findings));
  return [
    ...of([firstVote, claim]),
    claimCheck(typed.checked),
    ...of([sure, who, fair, beside, grading, secondVote, beliefScreen]),
    takeHomeScreen(findings, typed.takeHome),
  ];
}

function takeHomeScreen(findings: ClubFindings, typed: string): Screen {
  return {
    id: "take-home",
    question: "What do we take home?",
    answer: [
      claim(findings).answer[0]!,
      ...eitherWay(findings),
      ...shiftLines(findings.vote)
        .slice(0, 1)
        .map((line) => [line]),
      ...(typed.trim() === "" ? [] : [[`We will: ${typed.trim()}`]]),
    ],
    cautions: [["A vote and a few series choose no treatment: that stays with those who know the patient."]],
    tables: [],
    notes: ["One sentence: what will we do on Monday, and what would change our mind?", "Print the handout."],
    minutes: 1,
  };
}
