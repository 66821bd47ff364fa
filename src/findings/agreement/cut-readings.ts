import type { GradedReadings, MeasuredReadings } from "../../cases/readings/types.js";
import { gradePlace } from "../../stats/regrading/cut-points.js";

const roman = ["I", "II", "III", "IV", "V", "VI", "VII", "VIII", "IX", "X"];

/** Measurements graded at cut-points, named I, II and so on: a value above a cut-point is in the next grade. */
export function cutReadings(readings: MeasuredReadings, cuts: readonly number[]): GradedReadings {
  const { file, radiographs, columns, notes } = readings;
  return {
    kind: "grades",
    file,
    radiographs,
    columns,
    notes: [...notes, `Graded at ${cuts.join(", ")}: a value above a cut-point is in the next grade.`],
    grades: roman.slice(0, cuts.length + 1),
    numbers: null,
    readings: readings.readings.map((row) => row.map((value) => (value === null ? null : gradePlace(value, cuts)))),
  };
}
