import { fisherFreemanHalton } from "../../../src/stats/tables/fisher-freeman-halton.js";
import type { BenchTask } from "../task.js";

const table = {
  fourByFive: [
    [10, 5, 8, 9, 6],
    [4, 9, 8, 10, 7],
    [9, 8, 7, 5, 8],
    [6, 9, 10, 8, 4],
  ],
  fourByFour: [
    [15, 12, 10, 14],
    [9, 16, 12, 13],
    [14, 10, 13, 12],
    [8, 16, 15, 11],
  ],
  fiveByFive: [
    [5, 6, 4, 5, 4],
    [3, 7, 5, 4, 6],
    [6, 4, 5, 4, 5],
    [4, 5, 5, 7, 3],
    [6, 4, 4, 5, 4],
  ],
};
const inR = (rows: readonly (readonly number[])[]): string =>
  `matrix(c(${rows.flat().join()}), ${rows.length}, byrow = TRUE)`;

/** Never by random tables: it is the exact test that is timed. */
function exactP(rows: readonly (readonly number[])[]): number {
  const { method, p } = fisherFreemanHalton(rows, { workLimit: Infinity });
  if (method !== "exact Fisher-Freeman-Halton (network)") throw new Error(`bench: ${method}`);
  return p;
}

export const tasks: readonly BenchTask[] = [
  {
    name: "r x c exact, 4 x 5, 150 cases",
    ours: () => exactP(table.fourByFive),
    r: `fisher.test(${inR(table.fourByFive)}, workspace = 2e8)$p.value`,
    goal: 1.8e6,
  },
  // R takes a quarter of a minute for each of these two.
  { name: "r x c exact, 4 x 4, 199 cases", ours: () => exactP(table.fourByFour), goal: 2e6 },
  { name: "r x c exact, 5 x 5, 120 cases", ours: () => exactP(table.fiveByFive), goal: 14e6 },
  {
    name: "10,000 random 4 x 5 tables",
    ours: () => fisherFreemanHalton(table.fourByFive, { workLimit: 0, simulated: 10_000 }).p!,
    r: `fisher.test(${inR(table.fourByFive)}, simulate.p.value = TRUE, B = 10000)$p.value`,
    // Both are estimates: each has a standard error of 0.004.
    tolerance: 0.05,
    goal: 12_500,
  },
];
