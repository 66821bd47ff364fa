import type { SheetIssue } from "../sheet-error.js";
import { plainNumber } from "../values/read-number.js";
import type { ReadingsOptions } from "./types.js";

const roman = ["I", "II", "III", "IV", "V", "VI", "VII", "VIII", "IX", "X"];
const prefix = /^(grade|grad|gr|g|type|stage)[ .:-]*(?=[ivx\d])/i;
const MOST_WORDS = 12;

interface Cell {
  readonly text: string;
  readonly row: number;
  readonly column: string;
}

/** How the cells of a file are to be read, or what is wrong with them. */
export type Scale =
  | {
      readonly kind: "grades";
      readonly grades: readonly string[];
      readonly numbers: readonly number[] | null;
      readonly placeOf: (text: string) => number;
      readonly note: string;
    }
  | { readonly kind: "measurements"; readonly valueOf: (text: string) => number; readonly note: string }
  | { readonly kind: "wrong"; readonly issues: readonly SheetIssue[] };

/** Tells grades from measurements and finds the scale: given, Roman, whole numbers, else words as they appear. */
export function scaleOf(cells: readonly Cell[], options: ReadingsOptions): Scale {
  if (options.grades) return givenScale(cells, options.grades);
  const comma = cells.some(({ text }) => /^\d+,\d{1,2}$/.test(text)) ? true : undefined;
  const numberOf = (text: string): number => {
    const value = plainNumber(text.replace(/\s*(°|º|%|mm|cm|deg|degrees)$/i, ""), comma);
    return typeof value === "number" ? value : NaN;
  };
  const romanOf = (text: string): number => romanPlace(text.trim().replace(prefix, ""));
  const share = (fits: (text: string) => boolean): number =>
    cells.length === 0 ? 0 : cells.filter(({ text }) => fits(text)).length / cells.length;
  const isNumber = (text: string): boolean => Number.isFinite(numberOf(text));
  if (options.as === "measurements" || share(isNumber) >= 0.5) {
    const wrong = cells.filter(({ text }) => !isNumber(text));
    if (wrong.length > 0) return wrongCells(wrong, "a reading must be a number like the others, or empty");
    return numbers(cells, numberOf, options.as);
  }
  if (share((text) => romanOf(text) >= 0) >= 0.5) {
    const wrong = cells.filter(({ text }) => romanOf(text) < 0);
    if (wrong.length > 0)
      return wrongCells(wrong, "a grade must be one of I to X or 1 to 10 like the others, or empty");
    return romanScale(
      cells.map(({ text }) => romanOf(text)),
      romanOf,
    );
  }
  return words(cells);
}

function romanPlace(text: string): number {
  const place = roman.indexOf(text.toUpperCase());
  return place >= 0 ? place : /^([1-9]|10)$/.test(text) ? Number(text) - 1 : -1;
}

function numbers(cells: readonly Cell[], numberOf: (text: string) => number, as: ReadingsOptions["as"]): Scale {
  const values = cells.map(({ text }) => numberOf(text));
  const [low, high] = [Math.min(...values), Math.max(...values)];
  const whole = values.length > 0 && values.every((value) => Number.isInteger(value) && value >= 0 && value <= 10);
  if (as === "measurements" || !whole) {
    if (as === "grades") {
      const odd = cells.filter(({ text }) => !/^([0-9]|10)$/.test(text));
      return wrongCells(odd, "a grade given as a number must be whole, 0 to 10");
    }
    return { kind: "measurements", valueOf: numberOf, note: "Cells are numbers, taken for measurements." };
  }
  const scale = Array.from({ length: high - low + 1 }, (_, k) => low + k);
  return {
    kind: "grades",
    grades: scale.map(String),
    numbers: scale,
    placeOf: (text) => numberOf(text) - low,
    note: `Cells are whole numbers from ${low} to ${high}, taken for grades in that order, and for numbers where a measure needs them.`,
  };
}

function romanScale(places: readonly number[], romanOf: (text: string) => number): Scale {
  const [low, high] = [Math.min(...places), Math.max(...places)];
  const grades = roman.slice(low, high + 1);
  return {
    kind: "grades",
    grades,
    numbers: null,
    placeOf: (text) => romanOf(text) - low,
    note: `Grades are ordered ${grades.join(", ")}, from the lowest to the highest found.`,
  };
}

function words(cells: readonly Cell[]): Scale {
  const grades: string[] = [];
  const places = new Map<string, number>();
  for (const { text } of cells) {
    const key = text.toLowerCase();
    if (!places.has(key)) places.set(key, grades.push(text) - 1);
  }
  if (grades.length > MOST_WORDS) {
    const rule = `readings must be numbers, grades, or at most ${MOST_WORDS} different words`;
    return wrongCells([cells.find(({ text }) => text.toLowerCase() === grades[MOST_WORDS]!.toLowerCase())!], rule);
  }
  return {
    kind: "grades",
    grades,
    numbers: null,
    placeOf: (text) => places.get(text.toLowerCase())!,
    note: `Grades are words, ordered as they first appear: ${grades.join(", ")}. If that is not their order, give it.`,
  };
}

function givenScale(cells: readonly Cell[], grades: readonly string[]): Scale {
  const normal = (text: string): string => {
    const plain = text.trim().replace(prefix, "");
    const place = romanPlace(plain);
    return place >= 0 ? roman[place]! : text.trim().toLowerCase();
  };
  const places = new Map(grades.map((grade, place) => [normal(grade), place]));
  const wrong = cells.filter(({ text }) => !places.has(normal(text)));
  if (wrong.length > 0) return wrongCells(wrong, `a grade must be one of ${grades.join(", ")}, or empty`);
  return {
    kind: "grades",
    grades,
    numbers: grades.every((grade) => /^\d+$/.test(grade)) ? grades.map(Number) : null,
    placeOf: (text) => places.get(normal(text))!,
    note: `Grades are ordered as given: ${grades.join(", ")}.`,
  };
}

function wrongCells(cells: readonly Cell[], rule: string): Scale {
  return { kind: "wrong", issues: cells.map(({ text, row, column }) => ({ row, column, value: text, rule })) };
}
