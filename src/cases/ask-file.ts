import { askTables } from "./ask-tables.js";
import { isPlainName } from "./plain-words.js";
import type { Redact } from "./quarantine.js";
import type { SheetIssue } from "./sheet-error.js";
import { isCase, isNoCase, leaveHidden, lineId, struckId } from "./table/apply-line-answers.js";
import { headingRole } from "./table/heading-words.js";
import { lineText, type FoundTable } from "./table/find-table.js";
import type { Answers, Question, RawSheet } from "./types.js";

const colours =
  /\b(red|green|yellow|blue|orange|pink|purple|gr[ae]y|amber|highlight\w*|bold|italic\w*|shaded|struck|strikethrough|colou?r\w*)\b/i;
const changesNothing = "it changes nothing";
const willBeAdded = "a column will be added to the sheet";

/** Questions about the file as a whole and its lines: what a copy loses, what is hidden, what else the workbook holds. */
export function askFile(
  sheet: RawSheet,
  found: FoundTable,
  answers: Answers,
  redact: Redact,
): { readonly questions: readonly Question[]; readonly issues: readonly SheetIssue[] } {
  const all = [
    ...aboutLook(sheet, found, redact),
    ...aboutName(sheet.file, redact),
    ...aboutParts(sheet, found, redact),
    ...askTables(found, redact),
    ...aboutLines(found, redact),
  ];
  const issues = all.flatMap(({ id, choices }): SheetIssue[] => {
    if (!Object.hasOwn(answers, id) || choices.includes(answers[id]!)) return [];
    const rule = `the answer to "${id}" must be one of ${choices.map((choice) => `"${choice}"`).join(", ")}`;
    return [{ value: answers[id]!, rule, question: id }];
  });
  return { questions: all.filter(({ id }) => !Object.hasOwn(answers, id)), issues };
}

function question(
  id: string,
  rows: readonly number[],
  text: string,
  asks: string,
  choices: readonly string[],
): Question {
  return { id, rows, column: "", text, asks, choices };
}

/** Colours and comments carry meaning that cells do not show. */
function aboutLook(sheet: RawSheet, { setAside, lines }: FoundTable, redact: Redact): Question[] {
  const legend = setAside.filter(({ text }) => colours.test(text));
  const out = legend.map(({ row, text }) =>
    question(
      `colour | ${redact(text)}`,
      [row],
      redact(text),
      `row ${row} gives a colour or type style a meaning that the cells do not show: which cases does it concern?`,
      [changesNothing, willBeAdded],
    ),
  );
  if (legend.length === 0 && sheet.kind === "text")
    out.push(
      question("colour", [], "", "a text copy of a sheet loses colours and comments: did they mean anything?", [
        "they meant nothing",
        willBeAdded,
      ]),
    );
  const cases = new Set(lines.map(({ row }) => row.number));
  const coloured = (sheet.coloured ?? []).filter((row) => cases.has(row));
  if (coloured.length > 0)
    out.push(
      question(
        "coloured cells",
        coloured,
        "",
        "these rows have cells filled or written in a colour: does the colour mean anything?",
        [changesNothing, willBeAdded],
      ),
    );
  for (const { number, cells } of sheet.rows)
    for (const { comment } of cells)
      if (comment !== undefined)
        out.push(
          question(
            `comment | ${redact(comment)}`,
            [number],
            redact(comment),
            `a cell of row ${number} carries a comment: does it change the case?`,
            [changesNothing, "the cell will be corrected in the sheet"],
          ),
        );
  return out;
}

/** A file name travels with every copy and message. */
function aboutName(file: string, redact: Redact): Question[] {
  if (redact(file) === file) return [];
  const asks = "the file name holds part of an identifier of the sheet: rename it before it is shared";
  return [question("file name", [], "", asks, ["it will be renamed", "it names nobody"])];
}

/** Rows, columns and sheets that a reader of the workbook may not see, and what had to be done to read the file. */
function aboutParts(sheet: RawSheet, { headingRows, names, lines }: FoundTable, redact: Redact): Question[] {
  const out: Question[] = [];
  if (headingRows.length === 0)
    out.push(
      question(
        "heading",
        [],
        "",
        "no row names the columns: they were numbered and every row read as a case; is that right?",
        ["it is right so", "a heading will be added to the sheet"],
      ),
    );
  const led = sheet.rows.slice(0, 60).map(({ cells }) => headingRole(cells[0]?.text.trim() ?? ""));
  const turned = [...new Set(led)].filter((role) => role !== undefined && role !== "other");
  if (turned.length >= 3 && new Set(names.map(headingRole)).size <= 3)
    out.push(
      question(
        "turned",
        [],
        "",
        "the first column holds names of columns: one column a case? Turn the table, one row a case.",
        ["it is right so", "the file will be corrected"],
      ),
    );
  const hidden = sheet.rows.filter((row) => row.hidden).map(({ number }) => number);
  if (hidden.length > 0)
    out.push(
      question(
        "hidden rows",
        hidden,
        "",
        `${hidden.length === 1 ? "one row is" : `${hidden.length} rows are`} hidden in the sheet and read all the same: do they belong to the cases?`,
        ["include them", leaveHidden],
      ),
    );
  const cases = new Set(lines.map(({ row }) => row.number));
  const struck = (sheet.struck ?? []).filter((row) => cases.has(row));
  if (struck.length > 0)
    out.push(
      question(
        struckId,
        struck,
        "",
        `${struck.length === 1 ? "one row is" : `${struck.length} rows are`} struck through in the sheet and read all the same: do they belong to the cases?`,
        ["include them", leaveHidden],
      ),
    );
  if (sheet.hiddenColumns && sheet.hiddenColumns.length > 0)
    out.push(
      question(
        "hidden columns",
        [],
        sheet.hiddenColumns.map((c) => redact(names[c - 1] ?? "") || `number ${c}`).join(", "),
        "these columns are hidden in the sheet and were read: are they up to date?",
        ["they are up to date", "the file will be corrected"],
      ),
    );
  if (sheet.otherSheets && sheet.otherSheets.length > 0)
    out.push(
      question(
        "other sheets",
        [],
        sheet.otherSheets.map((name, i) => (isPlainName(name) ? redact(name) : `other sheet ${i + 1}`)).join(", "),
        `only ${shownSheet(sheet.sheetName, redact)} was read: do the others hold cases?`,
        ["only this sheet", "the sheets will be joined into one"],
      ),
    );
  for (const remark of sheet.remarks ?? [])
    out.push(question(`remark | ${remark}`, [], "", remark, ["it is right so", "the file will be corrected"]));
  return out;
}

/** Lines set aside for a reason that may be wrong, and cases that are nothing but a number. */
function aboutLines({ setAside, lines, names }: FoundTable, redact: Redact): Question[] {
  const doubtful = setAside.filter((each) => each.doubtful);
  const empty =
    names.filter((name) => name !== "").length > 2
      ? lines.filter(({ texts }) => texts.filter((text) => text !== "").length === 1)
      : [];
  return [
    ...doubtful.map(({ row, text, why }) =>
      question(lineId(text, redact), [row], redact(text), `row ${row} was set aside (${why}): is it a case?`, [
        isNoCase,
        isCase,
      ]),
    ),
    ...empty.map(({ row, texts }) =>
      question(
        lineId(lineText(texts), redact),
        [row.number],
        redact(lineText(texts)),
        `row ${row.number} has a number and nothing else: is it a case?`,
        [isCase, isNoCase],
      ),
    ),
  ];
}

function shownSheet(name = "", redact: Redact): string {
  return isPlainName(name) ? `the sheet "${redact(name)}"` : "the fullest sheet";
}
