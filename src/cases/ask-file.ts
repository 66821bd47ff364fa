import type { Redact } from "./quarantine.js";
import type { Question, RawSheet, SetAside } from "./types.js";

const colours =
  /\b(red|green|yellow|blue|orange|pink|purple|gr[ae]y|amber|highlight\w*|bold|italic\w*|shaded|struck|strikethrough|colou?r\w*)\b/i;
const ask = (
  topic: string,
  rows: readonly number[],
  text: string,
  asks: string,
  choices: readonly string[],
): Question => ({ id: topic, rows, column: "", text, asks, choices });

/** Questions about the file as a whole: what a copy loses, what is hidden, what else the workbook holds. */
export function askFile(sheet: RawSheet, setAside: readonly SetAside[], redact: Redact): Question[] {
  const questions: Question[] = [];
  const legend = setAside.filter(({ text }) => colours.test(text));
  for (const { row, text } of legend)
    questions.push(
      ask(
        `colour | ${text}`,
        [row],
        text,
        `row ${row} gives a colour or type style a meaning that this file does not carry: which cases does it concern?`,
        ["it changes nothing", "a column will be added to the sheet"],
      ),
    );
  if (legend.length === 0 && sheet.kind === "text")
    questions.push(
      ask("colour", [], "", "a text copy of a sheet loses colours and comments: did they mean anything?", [
        "they meant nothing",
        "a column will be added to the sheet",
      ]),
    );
  if (sheet.coloured && sheet.coloured.length > 0)
    questions.push(
      ask("colour", sheet.coloured, "", "these rows have coloured cells: does the colour mean anything?", [
        "it means nothing",
        "a column will be added to the sheet",
      ]),
    );
  const comments = sheet.rows.flatMap(({ number, cells }) =>
    cells.flatMap(({ comment }) => (comment === undefined ? [] : [{ number, comment }])),
  );
  for (const { number, comment } of comments)
    questions.push(
      ask(
        `comment | ${redact(comment)}`,
        [number],
        redact(comment),
        `a cell of row ${number} carries a comment: does it change the case?`,
        ["it changes nothing", "the cell will be corrected in the sheet"],
      ),
    );
  const hidden = sheet.rows.flatMap(({ number, hidden: isHidden }) => (isHidden ? [number] : []));
  if (hidden.length > 0)
    questions.push(
      ask(
        "hidden rows",
        hidden,
        "",
        "these rows are hidden in the sheet and have been read: do they belong to the cases?",
        ["include them", "leave them out"],
      ),
    );
  if (sheet.otherSheets && sheet.otherSheets.length > 0)
    questions.push(
      ask(
        "other sheets",
        [],
        sheet.otherSheets.join(", "),
        `only the sheet "${sheet.sheetName}" was read: do the others hold cases?`,
        ["only this sheet", "the sheets will be joined into one"],
      ),
    );
  for (const remark of sheet.remarks ?? [])
    questions.push(ask(`remark | ${remark}`, [], "", remark, ["it is right so", "the file will be corrected"]));
  return questions;
}
