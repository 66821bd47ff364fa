import type { RawSheet } from "../types.js";

/** Joins the rows of a heading to one name a column: "Injury: Grade". Index is the column's, from 0; "" where none. */
export function nameColumns(
  heading: readonly (readonly string[])[],
  numbers: readonly number[],
  merges: RawSheet["merges"] = [],
): string[] {
  const width = Math.max(0, ...heading.map((row) => row.length));
  const spread = heading.map((row, i) =>
    i === heading.length - 1 ? row : spreadGroups(row, heading[i + 1]!, numbers[i]!, merges, width),
  );
  const names = Array.from({ length: width }, (_, c) => {
    const parts = spread.map((row) => row[c] ?? "").filter((text) => text !== "");
    return parts.filter((text, i) => text !== parts[i - 1]).join(": ");
  });
  return distinctNames(names);
}

/** A group reaches right over names below it until the next group; merged cells of a workbook say how far exactly. */
function spreadGroups(
  row: readonly string[],
  below: readonly string[],
  number: number,
  merges: NonNullable<RawSheet["merges"]>,
  width: number,
): string[] {
  const inRow = merges.filter((merge) => merge.top <= number && merge.bottom >= number && merge.right > merge.left);
  const out = Array.from({ length: width }, (_, c) => row[c] ?? "");
  if (inRow.length > 0) {
    for (const { left, right } of inRow) for (let c = left; c < right && c < width; c++) out[c] = out[left - 1]!;
    return out;
  }
  let group = "";
  for (let c = 0; c < width; c++) {
    // A heading cell with nothing under it is a name of its own (merged downwards), not a group.
    if (out[c] !== "") group = (below[c] ?? "") === "" ? "" : out[c]!;
    else if ((below[c] ?? "") !== "") out[c] = group;
  }
  return out;
}

/** Equal names get a number, so that each column can be named in a question. */
export function distinctNames(names: readonly string[]): string[] {
  const seen = new Map<string, number>();
  const taken = new Set(names);
  return names.map((name) => {
    if (name === "") return "";
    let count = (seen.get(name) ?? 0) + 1;
    if (count > 1) while (taken.has(`${name} (${count})`)) count++;
    seen.set(name, count);
    return count === 1 ? name : `${name} (${count})`;
  });
}
