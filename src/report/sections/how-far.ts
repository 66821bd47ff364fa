import type { Findings, LadderRow } from "../../findings/types.js";
import { techniques, type Technique } from "../../plan/types.js";
import { casesSpan } from "../rate-text.js";
import type { Paragraph, Section, Span, TextTable } from "../text.js";
import { unitWords } from "../unit-words.js";

const question = "How far up the ladder did it go?";

/** How far up the ladder did it go? The final technique by grade, conversions shown as such. */
export function howFar(findings: Findings): Section {
  const { ladder } = findings;
  if ("estimate" in ladder)
    return { id: "ladder", question, answer: [[`This cannot be shown: ${ladder.because}.`]], cautions: [], tables: [] };
  const started = casesOf(ladder, ({ first }) => first === "closed");
  const converted = casesOf(ladder, ({ first, final }) => first === "closed" && final !== "closed");
  const answer: Paragraph = [
    casesSpan(`${converted.length} of ${started.length}`, "Converted", converted),
    ` ${unitWords(findings).many} tried closed first ended otherwise`,
    ...ends(ladder),
    ". A conversion counts as a failure of closed treatment where the plan says so.",
  ];
  return { id: "ladder", question, answer: [answer], cautions: [], tables: [table(ladder, findings)] };
}

function casesOf(rows: readonly LadderRow[], takes: (path: LadderRow["paths"][number]) => boolean): string[] {
  return rows.flatMap(({ paths }) => paths.filter(takes).flatMap(({ cases }) => cases));
}

function ends(rows: readonly LadderRow[]): Span[] {
  const parts = (["assisted", "open"] as const).flatMap((end): Span[] => {
    const cases = casesOf(rows, ({ first, final }) => first === "closed" && final === end);
    return cases.length === 0 ? [] : [casesSpan(`${cases.length} ${end}`, `Closed first, ended ${end}`, cases)];
  });
  if (parts.length === 0) return [];
  return [": ", ...parts.flatMap((part, i): Span[] => (i === 0 ? [part] : [" and ", part]))];
}

function table(rows: readonly LadderRow[], findings: Findings): TextTable {
  const cell = (paths: LadderRow["paths"], first: Technique, final: Technique): Span => {
    const cases = paths.find((path) => path.first === first && path.final === final)?.cases ?? [];
    return cases.length === 0 ? "0" : casesSpan(String(cases.length), `${first} first, ended ${final}`, cases);
  };
  const used = techniques
    .flatMap((first) => techniques.map((final) => [first, final] as const))
    .filter(([first, final]) =>
      rows.some(({ paths }) => paths.some((path) => path.first === first && path.final === final)),
    );
  return {
    caption: `From the first technique to the final one (eligible ${unitWords(findings).many})`,
    head: [
      "Grade",
      ...used.map(([first, final]) => (first === final ? `${first} throughout` : `${first}, then ${final}`)),
    ],
    rows: rows.map(({ grade, paths }) => [grade, ...used.map(([first, final]) => cell(paths, first, final))]),
    notes: [],
  };
}
