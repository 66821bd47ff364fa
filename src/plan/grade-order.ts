import type { Value } from "../cases/types.js";

const roman = ["I", "II", "III", "IV", "V", "VI", "VII", "VIII", "IX", "X"];

/** The grades found, from low to high: Roman and Arabic numbers by value, then other words by alphabet. */
export function gradeOrder(values: readonly Value[]): string[] {
  const found = values.flatMap((value) =>
    value.kind === "grade"
      ? [value.grade]
      : value.kind === "text"
        ? [value.text]
        : value.kind === "number"
          ? [String(value.number)]
          : [],
  );
  const rank = (grade: string): number => {
    const place = roman.indexOf(grade.toUpperCase());
    if (place >= 0) return place + 1;
    const number = Number(grade);
    return grade.trim() !== "" && Number.isFinite(number) ? number : Number.MAX_VALUE;
  };
  return [...new Set(found)].toSorted((a, b) => rank(a) - rank(b) || (a < b ? -1 : 1));
}
