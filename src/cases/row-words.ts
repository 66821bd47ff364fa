import type { CaseTable, Question } from "./types.js";

type Sheets = CaseTable["sheets"];

/** A row as a person finds it: of a stack of sheets, the row of its own sheet, which is named. */
export function rowWords(row: number, sheets: Sheets): string {
  const part = sheets?.find(({ first, last }) => row >= first && row <= last);
  return part ? `${row - part.first + 1} of sheet "${part.name}"` : String(row);
}

/** The questions with rows of a stack named by their sheet. */
export function inSheets(questions: readonly Question[], sheets: Sheets): readonly Question[] {
  if (!sheets) return questions;
  const named = (text: string): string =>
    text.replace(/\brow (\d+)\b/g, (_, row: string) => `row ${rowWords(Number(row), sheets)}`);
  return questions.map((question) => ({ ...question, asks: named(question.asks) }));
}
