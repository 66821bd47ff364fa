import type { Findings } from "../../findings/types.js";
import type { DenominatorName } from "../../findings/types.js";
import { counted, listText } from "../number-text.js";
import { casesSpan } from "../rate-text.js";
import type { Paragraph, Section, Span, TextTable } from "../text.js";
import { unitWords, type UnitWords } from "../unit-words.js";

/** What each rung of the ladder of denominators is called. */
export const rungWords: Readonly<Record<DenominatorName, string>> = {
  screened: "screened",
  eligible: "eligible",
  followed: "followed",
  analysed: "analysed",
};

/** Who is in it? */
export function who(findings: Findings): Section {
  const words = unitWords(findings);
  return {
    id: "who",
    question: "Who is in it?",
    answer: [entered(findings, words), ...left(findings, words), ...bilateral(findings, words)],
    cautions: findings.plan.frozen === undefined ? [["The plan was not frozen before the outcomes were seen."]] : [],
    tables: [table(findings, words)],
  };
}

function entered({ who: { ladder } }: Findings, words: UnitWords): Paragraph {
  const [screened, analysed] = [ladder[0]!, ladder.at(-1)!];
  return [
    "Of ",
    casesSpan(words.both(screened.cases.length, screened.children.length), "Screened", screened.cases),
    " screened, ",
    casesSpan(words.both(analysed.cases.length, analysed.children.length), "Analysed", analysed.cases),
    " could be analysed.",
  ];
}

function left({ who: { ladder } }: Findings, words: UnitWords): Paragraph[] {
  const rows = ladder.flatMap(({ leavers }) => leavers);
  if (rows.length === 0) return [["Nobody left on the way."]];
  const parts = rows.flatMap(({ reason, cases }, i): Span[] => [
    i === 0 ? "" : i === rows.length - 1 ? " and " : ", ",
    casesSpan(String(cases.length), reason, cases),
    ` ${reason}`,
  ]);
  return [["Left on the way: ", ...parts, ` (${words.many}).`]];
}

function bilateral({ who: { bilateralChildren, ladder }, cases }: Findings, words: UnitWords): Paragraph[] {
  if (bilateralChildren.length === 0) return [];
  const analysed = new Set(ladder.at(-1)!.cases);
  const ids = cases
    .filter(({ child, id }) => bilateralChildren.includes(child) && analysed.has(id))
    .map(({ id }) => id);
  return [
    [
      casesSpan(counted(bilateralChildren.length, "child", "children"), "Children with both sides", ids),
      ` had both sides treated; each side counts as one ${words.one}.`,
    ],
  ];
}

function table({ who: { ladder } }: Findings, words: UnitWords): TextTable {
  const rows = ladder.flatMap((rung): (readonly Span[])[] => [
    ...rung.leavers.map(({ reason, cases, children }) => [
      `\u2212 ${reason}`,
      casesSpan(String(cases.length), reason, cases),
      String(children.length),
    ]),
    [
      rungWords[rung.name],
      casesSpan(String(rung.cases.length), rungWords[rung.name], rung.cases),
      String(rung.children.length),
    ],
  ]);
  return {
    caption: "Denominators: each line is the one above less those who left",
    head: ["", words.Many, "Children"],
    rows,
    notes: [
      `A child leaves only with the last of its ${words.many}.`,
      listText(ladder.map(({ name }) => rungWords[name])) + " are the lines that later sections count from.",
    ],
  };
}
