import { showValue } from "../show-value.js";
import type { Value } from "../types.js";
import { readMissing } from "./read-missing.js";
import { ask, leftOut, limbChoices, notKnown, unreadable, type Choice, type Reader } from "./reading.js";

const roman = ["I", "II", "III", "IV", "V", "VI", "VII", "VIII", "IX", "X"] as const;
const prefix = /^(grade|grad|gr|g|type|typ|stage|stadium|class|cl|t)[ .:-]*(?=[ivx\d])/i;
const single = /^(i{1,3}|iv|vi{0,3}|ix|x|10|[0-9])[ .-]*\(?([a-f])?\)?$/i;

/** Grade of one plain spelling: Roman and Arabic fold to Roman, a letter after it is the sub-grade. */
function plainGrade(text: string): Extract<Value, { kind: "grade" }> | undefined {
  const folded = foldSigns(text)
    .replace(prefix, "")
    .replace(/ ?[°º]$/, "");
  const match = single.exec(folded);
  if (!match) return undefined;
  const sub = match[2]?.toLowerCase();
  const grade = /^\d/.test(match[1]!) ? (roman[Number(match[1]) - 1] ?? match[1]!) : match[1]!.toUpperCase();
  return { kind: "grade", grade, ...(sub ? { sub } : {}) };
}

/** Typed look-alikes of the Roman signs: one-letter Unicode numerals, the letter l and the bar. */
function foldSigns(text: string): string {
  return text
    .normalize("NFKC")
    .replace(/^(?=[il1|v]+$)[l|]+$/i, (run) => "I".repeat(run.length))
    .trim();
}

/**
 * A grade: "III", "3", "iii", "G3", "grade 3b" (III, sub-grade b). Doubts and ranges ("3?", "3-4", "III/IV") are asked;
 * a measurement in the grade column is asked, never cut.
 */
export const readGrade: Reader = (text, facts, cell) => {
  const gone = readMissing(text);
  if (gone) return gone;
  if (/^x$/i.test(text) && !facts.tenGrades)
    return ask("grade", text, `"${text}" may be a mark or grade X: which grade?`, gradesAsked());
  const plain = cell.number === undefined || Number.isInteger(cell.number) ? plainGrade(text) : undefined;
  if (plain)
    return plain.sub
      ? { value: plain, why: `grade ${plain.grade}, sub-grade ${plain.sub} kept apart` }
      : recoded(text, plain);
  if (facts.wordGrades && /^\p{L}[\p{L} -]{0,30}$/u.test(text)) {
    const grade = text.length === 1 ? text.toUpperCase() : text.toLowerCase();
    return recoded(text, { kind: "grade", grade });
  }
  const choice = (grade: Value): Choice => ({
    label: `grade ${grade.kind === "grade" ? grade.grade : ""}`,
    value: grade,
  });
  const doubt = plainGrade(text.replace(/[?*+~¹²³†‡]+|\(\?\)|^(probably|prob\.?|maybe|at least)\s+/gi, "").trim());
  if (doubt) return ask("grade", text, `"${text}" marks a doubt: which grade?`, [choice(doubt), notKnown]);
  const ends = /^(.+?)\s*(?:-|–|—|\/|to|or|bis|oder|,|&|\+|->|→)\s*(.+)$/i.exec(text.replace(prefix, ""));
  const both = ends ? [plainGrade(ends[1]!), plainGrade(ends[2]!)] : [];
  if (both[0] && both[1]) {
    const limbs = /[/,&+]/.test(text) ? limbChoices(both[0], both[1], showValue) : [];
    return ask("grade", text, `"${text}" names two grades: which one?`, [
      choice(both[0]),
      choice(both[1]),
      ...limbs,
      notKnown,
    ]);
  }
  if (/%|mm|cm|°|\d[.,]\d|^\d+\/\d+$/.test(text))
    return ask("grade", text, `"${text}" looks like a measurement, not a grade: which grade?`, gradesAsked());
  if (cell.date !== undefined || /^\d{1,2}[-. ](jan|feb|mar|apr|may|jun|jul|aug|sep|oct|nov|dec)/i.test(text))
    return ask(
      "grade",
      text,
      `"${text}" is a date where a grade belongs; a range such as 3-4 turns into one: which grade?`,
      gradesAsked(),
    );
  const code = /^\d+$/.test(text);
  return code
    ? ask("grade", text, `${text} is not a usual grade: a code for missing?`, [
        ...leftOut,
        ...gradesAsked().slice(0, 4),
      ])
    : unreadable(text, "a grade", gradesAsked().slice(0, 4));
};

function recoded(text: string, value: Extract<Value, { kind: "grade" }>): { value: Value; why?: string } {
  return text === value.grade ? { value } : { value, why: `grade ${value.grade}` };
}

function gradesAsked(): readonly Choice[] {
  return [
    ...roman.slice(0, 4).map((grade): Choice => ({ label: `grade ${grade}`, value: { kind: "grade", grade } })),
    notKnown,
  ];
}
