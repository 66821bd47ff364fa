import { SheetError } from "../sheet-error.js";
import type { RawSheet } from "../types.js";
import { readingGrid } from "./grid.js";
import { occasionsOf } from "./occasions.js";
import { scaleOf } from "./scale.js";
import type { Readings, ReadingsOptions } from "./types.js";

/**
 * Understands a file of readings: who read which radiograph, once or twice, as grades or as measurements.
 *
 * Nothing is guessed in silence: what was taken for granted is in `notes`. Empty cells and words such as "not done" are
 * missing readings.
 *
 * @throws SheetError with every cell that does not fit, by row, column and rule; RangeError for a scale given twice over
 */
export function readReadings(sheet: RawSheet, options: ReadingsOptions = {}): Readings {
  const given = options.grades?.map((grade) => grade.trim());
  if (given && (given.length < 2 || new Set(given).size < given.length || given.includes("")))
    throw new RangeError(`readReadings: grades must name at least two different grades, got "${given.join(", ")}"`);
  const grid = readingGrid(sheet);
  const { columns, note } = occasionsOf(grid.headings);
  const cells = grid.cells.flatMap((row) =>
    row.flatMap((cell, j) => (cell === null ? [] : [{ ...cell, column: grid.headings[j]! }])),
  );
  if (cells.length === 0)
    throw new SheetError(sheet.file, [{ rule: "must hold at least one reading, all cells are empty" }]);
  const scale = scaleOf(cells, given ? { ...options, grades: given } : options);
  if (scale.kind === "wrong") throw new SheetError(sheet.file, scale.issues);
  const empty = grid.headings.filter((_, j) => grid.cells.every((row) => row[j] === null));
  const notes = [
    ...grid.notes,
    scale.note,
    ...(note === null ? [] : [note]),
    ...empty.map((name) => `${name} holds no reading.`),
    ...copies(grid.headings, grid.cells),
  ];
  const shared = { file: sheet.file, radiographs: grid.radiographs, columns, notes };
  const read = (value: (text: string) => number) =>
    grid.cells.map((row) => row.map((cell) => (cell === null ? null : value(cell.text))));
  if (scale.kind === "measurements") return { ...shared, kind: "measurements", readings: read(scale.valueOf) };
  const { grades, numbers, placeOf } = scale;
  return { ...shared, kind: "grades", grades, numbers, readings: read(placeOf) };
}

/** Two columns alike in ten radiographs or more may have been copied. */
function copies(
  headings: readonly string[],
  cells: readonly (readonly ({ readonly text: string } | null)[])[],
): string[] {
  return headings.flatMap((first, a) =>
    headings.slice(a + 1).flatMap((second, k) => {
      const both = cells.filter((row) => row[a] && row[a + 1 + k]);
      const alike = both.every((row) => row[a]!.text === row[a + 1 + k]!.text);
      return both.length >= 10 && alike
        ? [`${first} and ${second} are the same in all ${both.length} radiographs that both hold: was one copied?`]
        : [];
    }),
  );
}
