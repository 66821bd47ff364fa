import { plainHeading } from "./table/heading-words.js";
import type { CaseName } from "./table/identify-cases.js";
import type { Answers, Question } from "./types.js";
import type { Unread } from "./values/read-columns.js";
import { questionId } from "./values/read-column.js";

const oneChild = "one child";
const different = "different children";
/** Shared by brothers and sisters, or by many: birth dates, telephones, addresses, schools. */
const shared =
  /\b(dob|birth\w*|born|geb\w*|phone|tel\w*|mobile|address|street|post ?code|zip|plz|city|town|village|lives|school|schule|mother|father|mum|dad|parents?|guardian|contact|gp|doctor|e ?mail|image|film|photo|sur ?name|family name|nachname|initials)\b/;

/**
 * The same name or record number under two study numbers: one child, or two? Identifiers are compared, never shown. Until the
 * answer they are different children.
 */
export function samePersons(
  draft: Unread,
  answers: Answers,
): { readonly cases: readonly CaseName[]; readonly questions: readonly Question[] } {
  const { roles, names, positions, lines, cases } = draft;
  if (!roles.includes("id")) return { cases, questions: [] };
  const groups = new Map<string, { children: Set<string>; rows: number[]; column: string }>();
  roles.forEach((role, k) => {
    if (role !== "identifier" || shared.test(plainHeading(names[k]!))) return;
    const by = new Map<string, number[]>();
    lines.forEach(({ texts }, i) => {
      const text = (texts[positions[k]!] ?? "")
        .toLowerCase()
        .replace(/[\s.,-]+/g, " ")
        .trim();
      if (text.length < 4) return;
      const held = by.get(text);
      if (held) held.push(i);
      else by.set(text, [i]);
    });
    // A column in which few things stand often names no single person.
    if (by.size < lines.length * 0.5) return;
    for (const held of by.values()) {
      const children = new Set(held.map((i) => cases[i]!.child));
      const key = [...children].toSorted().join(", ");
      if (children.size > 1)
        groups.set(key, { children, rows: held.map((i) => lines[i]!.row.number), column: names[k]! });
    }
  });
  const alias = new Map<string, string>();
  const questions: Question[] = [];
  for (const [text, { children, rows, column }] of groups) {
    const id = questionId(column, "one child", text);
    const answer = Object.hasOwn(answers, id) ? answers[id] : undefined;
    if (answer === oneChild) for (const child of children) alias.set(child, [...children][0]!);
    else if (answer !== different)
      questions.push({
        ...{ id, rows, column, text },
        asks: `${text} have the same "${column}" (withheld) under different numbers: one child, or different ones?`,
        choices: [oneChild, different],
      });
  }
  if (alias.size === 0) return { cases, questions };
  return { cases: cases.map((one) => ({ ...one, child: alias.get(one.child) ?? one.child })), questions };
}
