import type { ClubFindings } from "../../findings/club/club-findings.js";
import { expectedBands } from "../../findings/vote/vote.js";
import type { Poll } from "../../findings/vote/vote-findings.js";
import { levelText, percentRangeText, percentText } from "../number-text.js";
import type { TextTable } from "../text.js";
import { shiftLines } from "../vote/shift-text.js";
import { askedText, expectsText, stepTexts, wouldText } from "../vote/vote-text.js";
import type { Screen } from "./screen.js";

const asking = (findings: ClubFindings): string =>
  `Of 100 cases like ${askedText(findings)}, how many would succeed? Would you do it?`;

export function firstVote(findings: ClubFindings): Screen {
  const { before } = findings.vote;
  return {
    id: "first-vote",
    question: "What do you expect?",
    answer: [[asking(findings)], [expectsText(before)], [wouldText(before)]],
    cautions: [],
    tables: [pollTable("First vote", [before], ["Hands"])],
    notes: [
      "Ask before anything is shown. Read the steps aloud, count the hands, type them.",
      "Then ask for yes and no. Everyone has one hand for each question.",
    ],
    minutes: 2,
  };
}

export function secondVote(findings: ClubFindings): Screen {
  const { before, after, paired } = findings.vote;
  return {
    id: "second-vote",
    question: "What do you expect now?",
    answer: [[asking(findings)], ...shiftLines(findings.vote).map((line) => [line])],
    cautions: [["A vote shows what this room thinks, not what is true."]],
    tables: [
      pollTable("Both votes", [before, after], ["Before", "After"]),
      ...(paired === null ? [] : [bandTable(paired.expected.table)]),
    ],
    notes: ["Ask the same words as before.", "Let one who changed say why, and one who did not."],
    minutes: 2,
  };
}

export function beliefScreen(findings: ClubFindings): Screen {
  const { belief, asked } = findings;
  const { update, width } = belief;
  const how =
    width === "hands" ? "as wide as the hands lie apart" : `as if the room had already seen ${width.cases} cases`;
  const answer =
    update && "because" in update
      ? [[`No curve: ${update.because}.`]]
      : [
          [
            `The room guessed ${percentText(update.before.mean, 1)} (${levelText(update.level)} of the curve: ${percentRangeText(update.before.interval, 1)}), ${how}.`,
          ],
          [
            `With ${update.count.successes} of ${update.count.trials} from the paper the curve moves to ${percentText(update.after.mean, 1)} (${percentRangeText(update.after.interval, 1)}).`,
          ],
        ];
  return {
    id: "belief",
    question: "What should the guess become?",
    answer,
    cautions: [
      [
        "The first curve pictures how the guesses spread; it is nobody's certainty. It takes the paper's cases to be like ours.",
      ],
    ],
    tables: [],
    notes: [
      `The paper has ${asked.estimate === null ? "no count" : `${asked.successes} of ${asked.cases}`}. The more cases, the less the first guess matters.`,
      "Beta guess by moments (NIST/SEMATECH e-Handbook, 1.3.6.6.17), updated by the count (beta-binomial).",
    ],
    minutes: 2,
  };
}

function pollTable(caption: string, polls: readonly Poll[], names: readonly string[]): TextTable {
  const row = (label: string, of: (poll: Poll) => number): string[] => [
    label,
    ...polls.map((poll) => String(of(poll))),
  ];
  return {
    caption,
    head: ["Answer", ...names],
    rows: [
      ...stepTexts.map((text, i) => row(text, ({ expected }) => expected[i]!)),
      row("would do it", ({ yes }) => yes),
      row("would not", ({ no }) => no),
    ],
    notes: [],
  };
}

function bandTable(table: readonly (readonly number[])[]): TextTable {
  return {
    caption: "Expected success before (rows) and after (columns), voters",
    head: ["", ...expectedBands.map(({ name }) => name)],
    rows: table.map((counts, i) => [expectedBands[i]!.name, ...counts.map(String)]),
    notes: ["The bands were fixed before any vote."],
  };
}
