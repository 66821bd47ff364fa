import { fisherFreemanHalton } from "../../../src/stats/tables/fisher-freeman-halton.js";
import type { BenchTask } from "../task.js";

const tables = [
  {
    size: "4 x 2, 57 cases",
    rows: [
      [9, 0],
      [15, 1],
      [12, 3],
      [6, 5],
    ],
  },
  {
    size: "4 x 4, 104 cases",
    rows: [
      [12, 4, 0, 3],
      [5, 10, 4, 6],
      [3, 4, 9, 3],
      [9, 8, 14, 10],
    ],
  },
  {
    size: "3 x 4, 100 cases",
    rows: [
      [14, 9, 6, 4],
      [8, 12, 9, 5],
      [3, 7, 10, 13],
    ],
  },
];

export const tasks: readonly BenchTask[] = tables.map(({ size, rows }) => ({
  name: `r x c exact, ${size}`,
  ours: () => fisherFreemanHalton(rows).p!,
  r: `fisher.test(matrix(c(${rows.flat().join(", ")}), ${rows.length}, byrow = TRUE), workspace = 2e7)$p.value`,
  // R's network algorithm drops short paths: its p was seen to be off by 2.5e-7.
  tolerance: 1e-6,
}));
