import { addColumn, type SheetTable } from "./table/add-column.js";
import type { Line } from "./table/find-table.js";
import { headingRole } from "./table/heading-words.js";
import { belongingOf } from "./table/yes-no-heading.js";
import type { Answers, Question } from "./types.js";
import { readGrade } from "./values/read-grade.js";
import { readSide } from "./values/read-side.js";
import { plainFacts } from "./values/reading.js";
import { stepOf } from "./values/technique-words.js";

const mark = /^([x+*✓✔]|1|y|yes|ja)$/i;
const kinds: readonly {
  readonly name: string;
  readonly fewest: number;
  readonly valueOf: (heading: string) => string | undefined;
}[] = [
  { name: "Grade", fewest: 3, valueOf: gradeOf },
  {
    name: "Technique",
    fewest: 2,
    valueOf: (heading) => (heading.split(" ").length <= 2 ? stepOf(heading) : undefined),
  },
  { name: "Side", fewest: 2, valueOf: sideOf },
];

const subheadingsId = "grades in sub-headings";
const rowsBelow = "the grade of the rows below";

/** A table with the columns that were gathered from others, and what must be asked before more can be. */
export interface Gathered extends SheetTable {
  /** Names of the columns that were gathered into one, which say nothing of their own. */
  readonly sources: ReadonlySet<string>;
  readonly questions: readonly Question[];
}

/**
 * One column a value with a mark in the row's own ("Gr I", "Gr II", "Gr III" with x) becomes one column; so does a yes or no
 * about conversion, which with the first technique gives the final one. What was gathered is said in a remark. A grade that
 * stands only above its rows is asked about.
 */
export function gatherColumns(start: SheetTable, answers: Answers): Gathered {
  let table = start;
  const sources = new Set<string>();
  for (const kind of kinds) table = gathered(table, kind, sources);
  table = gradeSheets(table);
  const lines = graded(table) ? [] : gradeLines(table);
  const answer = Object.hasOwn(answers, subheadingsId) ? answers[subheadingsId] : undefined;
  if (answer === rowsBelow && lines.length > 1) table = underSubheadings(table, lines);
  const open = lines.length > 1 && answer === undefined ? [askSubheadings(lines)] : [];
  return { ...converted(table), questions: open, sources };
}

function graded({ found }: SheetTable): boolean {
  return found.names.some((name) => headingRole(name.split(": ").at(-1)!) === "grade");
}

/** Single cells between the cases that name a grade, in the order of the rows. */
function gradeLines({
  found: { setAside, lines },
}: SheetTable): { readonly row: number; readonly grade: string; readonly text: string }[] {
  const last = lines.at(-1)?.row.number ?? 0;
  return setAside.flatMap(({ row, text, line }) => {
    const grade = line.texts.filter((each) => each !== "").length === 1 && row < last ? gradeOf(text) : undefined;
    return grade === undefined ? [] : [{ row, grade, text }];
  });
}

function askSubheadings(lines: ReturnType<typeof gradeLines>): Question {
  const text = lines.map((line) => line.text).join(", ");
  return {
    ...{ id: subheadingsId, rows: lines.map(({ row }) => row), column: "", text },
    asks: `no column holds a grade, but lines between the cases name one (${text}): is it the grade of the rows below?`,
    choices: [rowsBelow, "it is something else"],
  };
}

function underSubheadings(table: SheetTable, lines: ReturnType<typeof gradeLines>): SheetTable {
  const above = (row: number): string => lines.findLast((line) => line.row < row)?.grade ?? "";
  return addColumn(table, "Grade", ({ row }) => above(row.number));
}

/** Sheets read together that are named for their grade. */
function gradeSheets(table: SheetTable): SheetTable {
  const { names, lines } = table.found;
  const at = names.indexOf("Sheet");
  if (at < 0 || graded(table) || !lines.every(({ texts }) => gradeOf(texts[at] ?? "") !== undefined)) return table;
  return withRemark(
    addColumn(table, "Grade", ({ texts }) => gradeOf(texts[at]!)!),
    "the names of the sheets were read as grades",
  );
}

function gathered(
  table: SheetTable,
  { name, fewest, valueOf }: (typeof kinds)[number],
  sources: Set<string>,
): SheetTable {
  const { names, lines } = table.found;
  if (names.some((each) => headingRole(each.split(": ").at(-1)!) === headingRole(name) && valueOf(each) === undefined))
    return table;
  const columns = names.flatMap((heading, c) => {
    const value = heading === "" ? undefined : valueOf(heading.split(": ").at(-1)!);
    return value === undefined || !lines.every(({ texts }) => marked(texts[c]) || unmarked(texts[c]))
      ? []
      : [{ c, value }];
  });
  const marks = lines.map(({ texts }) => columns.filter(({ c }) => marked(texts[c])));
  const single = marks.filter(({ length }) => length === 1).length;
  if (new Set(columns.map(({ value }) => value)).size < fewest || single < lines.length * 0.8) return table;
  for (const { c } of columns) sources.add(names[c]!);
  const heads = columns.map(({ c }) => `"${names[c]}"`).join(", ");
  const remark = `${heads} hold one mark a row and were read as one column "${name}"`;
  const values = new Map(lines.map((line, i) => [line.row.number, marks[i]!.map(({ value }) => value).join("/")]));
  return withRemark(
    addColumn(table, name, ({ row }) => values.get(row.number) ?? ""),
    remark,
  );
}

function marked(text = ""): boolean {
  return mark.test(text);
}

function unmarked(text = ""): boolean {
  return /^(|0|n|no|-|nein)$/i.test(text);
}

function gradeOf(heading: string): string | undefined {
  const { value } = readGrade(heading, plainFacts, { text: heading });
  return value.kind === "grade" && /[IVX1-9]/i.test(heading) ? value.grade : undefined;
}

function sideOf(heading: string): string | undefined {
  const { value } = readSide(heading, plainFacts, { text: heading });
  return value.kind === "text" ? value.text : undefined;
}

/** "Converted to open: Y" beside the technique tried first says what ended the case. */
function converted(table: SheetTable): SheetTable {
  const { names, lines } = table.found;
  const roles = names.map((name) => headingRole(name.split(": ").at(-1)!));
  const first = roles.indexOf("firstTechnique");
  const at = names.findIndex(
    (name, c) => belongingOf(name) === "conversion" && roles[c] !== "date" && yesOrNo(lines, c),
  );
  if (first < 0 || at < 0 || roles.includes("finalTechnique")) return table;
  const remark = `"${names[at]}" and "${names[first]}" were read together as the final technique: open where it says yes`;
  const final = ({ texts }: Line): string =>
    /^(y|yes|ja|oui)$/i.test(texts[at] ?? "") ? "open" : (texts[first] ?? "");
  return withRemark(addColumn(table, "Final technique", final), remark);
}

function yesOrNo(lines: readonly Line[], c: number): boolean {
  const said = lines.map(({ texts }) => texts[c] ?? "").filter((text) => text !== "");
  return (
    said.some((text) => /^(y|yes|ja|oui)$/i.test(text)) &&
    said.every((text) => /^(y|yes|n|no|ja|nein|oui|non|-)$/i.test(text))
  );
}

function withRemark({ sheet, found }: SheetTable, remark: string): SheetTable {
  return { sheet: { ...sheet, remarks: [...(sheet.remarks ?? []), remark] }, found };
}
