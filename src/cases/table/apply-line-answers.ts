import type { Redact } from "../quarantine.js";
import type { Answers } from "../types.js";
import { lineText, type FoundTable } from "./find-table.js";

export const isCase = "a case";
export const isNoCase = "not a case";
export const leaveHidden = "leave them out";
export const struckId = "struck rows";

/** Lasting name of the question whether a line is a case. */
export function lineId(text: string, redact: Redact): string {
  return `line | ${redact(text)}`;
}

/** Moves lines into and out of the cases as answered; hidden rows leave together. */
export function applyLineAnswers(
  found: FoundTable,
  answers: Answers,
  redact: Redact,
  struckRows: readonly number[] = [],
): FoundTable {
  const says = (text: string): string | undefined => {
    const id = lineId(text, redact);
    return Object.hasOwn(answers, id) ? answers[id] : undefined;
  };
  const hidden = Object.hasOwn(answers, "hidden rows") && answers["hidden rows"] === leaveHidden;
  const leaves = Object.hasOwn(answers, struckId) && answers[struckId] === leaveHidden;
  const struck = new Set(leaves ? struckRows : []);
  if (!hidden && struck.size === 0 && !Object.keys(answers).some((id) => id.startsWith("line | "))) return found;
  const back = found.setAside.filter(({ text }) => says(text) === isCase).map(({ line }) => line);
  const out = found.lines.flatMap((line) => {
    const text = lineText(line.texts);
    const why =
      says(text) === isNoCase
        ? "not a case, as answered"
        : hidden && line.row.hidden
          ? "hidden row, left out as answered"
          : struck.has(line.row.number)
            ? "struck through, left out as answered"
            : undefined;
    return why === undefined ? [] : [{ row: line.row.number, text, why, line, doubtful: false }];
  });
  const gone = new Set(out.map(({ line }) => line));
  const lines = [...found.lines.filter((line) => !gone.has(line)), ...back];
  return {
    ...found,
    lines: lines.toSorted((a, b) => a.row.number - b.row.number),
    setAside: [...found.setAside.filter(({ line }) => !back.includes(line)), ...out],
  };
}
