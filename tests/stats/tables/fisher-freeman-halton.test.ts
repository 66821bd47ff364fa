import fc from "fast-check";
import { expect, it, test } from "vitest";
import { fisherFreemanHalton } from "../../../src/stats/tables/fisher-freeman-halton.js";
import { cpuMilliseconds } from "../../cpu-milliseconds.js";
import { numbers } from "../../numbers.js";
import { r } from "../../r.js";
import { expectRelative } from "../../relative.js";
import { worked, workedInput } from "../../worked.js";
import { enumeratedP } from "./enumerate-tables.js";

const exact = "exact Fisher-Freeman-Halton (network)";
const simulated = "Monte Carlo Fisher-Freeman-Halton";

function randomTable(random: (low: number, high: number) => number, shape: readonly [number, number], most: number) {
  return Array.from({ length: shape[0] }, () => Array.from({ length: shape[1] }, () => random(0, most)));
}

it("equals full enumeration in whole numbers to 1e-12 on 300 small tables", () => {
  const random = numbers(3);
  const shapes = [
    [2, 2],
    [2, 3],
    [3, 2],
    [3, 3],
    [4, 2],
    [2, 5],
    [3, 4],
    [4, 3],
    [4, 4],
    [5, 3],
  ] as const;
  for (let i = 0; i < 300; i++) {
    const shape = shapes[i % shapes.length]!;
    const cells = shape[0] * shape[1];
    const table = randomTable(random, shape, cells <= 6 ? 9 : cells <= 10 ? 4 : 1);
    if (table.flat().every((count) => count === 0)) continue;
    const result = fisherFreemanHalton(table);
    expect(result.method).toBe(exact);
    expectRelative(result.p!, enumeratedP(table), 1e-12, JSON.stringify(table));
  }
});

it("keeps twelve digits of a p far below what chance could show", () => {
  const table = [
    [30, 1, 0],
    [2, 28, 1],
    [0, 1, 33],
  ];
  const expected = enumeratedP(table);
  expect(expected).toBeLessThan(1e-25);
  expectRelative(fisherFreemanHalton(table).p!, expected, 1e-12, "far tail");
});

it("agrees with R's fisher.test on 200 tables to what R holds", async () => {
  const random = numbers(8);
  const tables = Array.from({ length: 200 }, (_, i) => randomTable(random, i % 2 === 0 ? [3, 4] : [4, 2], 7)).filter(
    (table) => table.every((row) => row.some((count) => count > 0)),
  );
  const calls = tables.map(
    (table) =>
      `fisher.test(matrix(c(${table.flat().join()}), nrow = ${table.length}, byrow = TRUE), workspace = 2e6)$p.value`,
  );
  const values = await r(`c(${calls.join()})`);
  // R's network merges paths of nearly equal length: it was seen off by 2.5e-7, relatively.
  tables.forEach((table, i) => expectRelative(fisherFreemanHalton(table).p!, values[i]!, 1e-6, JSON.stringify(table)));
});

test("income by job satisfaction (Agresti 2002, p. 57): 0.7827", () => {
  const { table } = workedInput<{ table: number[][] }>("C-job");
  worked("C-job", "p_freeman_halton").check(fisherFreemanHalton(table).p!);
});

it("gives Fisher's p of published 2 x 2 tables", () => {
  for (const [id, key] of [
    ["C-tea", "p_two"],
    ["C-lydersen2009-cardiac", "fisher_two"],
    ["C-altman-spectacles", "fisher_two"],
  ] as const) {
    const { table } = workedInput<{ table: number[][] }>(id);
    worked(id, key).check(fisherFreemanHalton(table).p!);
  }
});

const tables = fc
  .tuple(fc.integer({ min: 2, max: 4 }), fc.integer({ min: 2, max: 4 }))
  .chain(([rows, columns]) =>
    fc.array(fc.array(fc.nat(8), { minLength: columns, maxLength: columns }), { minLength: rows, maxLength: rows }),
  )
  .filter((table) => table.flat().some((count) => count > 0));

it("does not change when rows, columns or both sides change places, or empty ones are added", () => {
  fc.assert(
    fc.property(tables, (table) => {
      const { p } = fisherFreemanHalton(table);
      const turned = table[0]!.map((_, j) => table.map((row) => row[j]!));
      const padded = [...table.map((row) => [...row, 0]), [...table[0]!.map(() => 0), 0]];
      for (const other of [table.toReversed(), table.map((row) => row.toReversed()), turned, padded])
        expectRelative(fisherFreemanHalton(other).p!, p!, 1e-11, JSON.stringify(other));
      expect(p).toBeGreaterThan(0);
      expect(p).toBeLessThanOrEqual(1);
    }),
    { numRuns: 60 },
  );
});

it("draws random tables whose interval holds the exact p, when the exact way is closed", () => {
  const random = numbers(21);
  for (let i = 0; i < 20; i++) {
    const table = randomTable(random, [3, 4], 6);
    if (!table.every((row) => row.some((count) => count > 0))) continue;
    const { p } = fisherFreemanHalton(table);
    const estimate = fisherFreemanHalton(table, { workLimit: 0, simulated: 20_000, seed: i });
    expect(estimate).toMatchObject({ method: simulated, simulated: 20_000, seed: i, level: 0.99 });
    if (!("interval" in estimate)) throw new Error("random tables have an interval");
    expect(estimate.interval.low).toBeLessThanOrEqual(p!);
    expect(estimate.interval.high).toBeGreaterThanOrEqual(p!);
    expect(estimate.p).toBeGreaterThan(0);
  }
});

it("draws as many random tables as a second allows, and as many as are asked for", () => {
  const table = Array.from({ length: 30 }, (_, i) => Array.from({ length: 20 }, (_cell, j) => (i + j) % 3));
  expect(fisherFreemanHalton(table)).toMatchObject({ method: simulated, simulated: 16_666 });
  expect(fisherFreemanHalton(table, { simulated: 2000 })).toMatchObject({ simulated: 2000 });
});

it("repeats itself with the same seed and not with another", () => {
  const table = randomTable(numbers(2), [5, 5], 30);
  const first = fisherFreemanHalton(table, { simulated: 5000 });
  expect(first.method).toBe(simulated);
  expect(fisherFreemanHalton(table, { simulated: 5000 })).toEqual(first);
  const odd = fisherFreemanHalton(
    [
      [7, 3, 9],
      [2, 8, 4],
      [6, 6, 3],
    ],
    { workLimit: 0, simulated: 5000 },
  );
  const other = fisherFreemanHalton(
    [
      [7, 3, 9],
      [2, 8, 4],
      [6, 6, 3],
    ],
    { workLimit: 0, simulated: 5000, seed: 2 },
  );
  expect(other.p).not.toBe(odd.p);
});

it("answers for any table of a thousand cases in about a second", () => {
  const random = numbers(77);
  for (const shape of [
    [2, 8],
    [3, 3],
    [4, 5],
    [5, 6],
    [8, 8],
    [12, 12],
    [30, 30],
    [100, 10],
    [400, 2],
  ] as const) {
    const table = randomTable(random, shape, Math.ceil(2000 / (shape[0] * shape[1])));
    const start = process.cpuUsage();
    expect(fisherFreemanHalton(table).p).not.toBeNaN();
    // Twice the goal of 1 s, for a machine that others use too.
    expect(cpuMilliseconds(start), JSON.stringify(shape)).toBeLessThan(2000);
  }
});

it("is certain when there is nothing to vary", () => {
  for (const table of [
    [[5]],
    [[3, 4]],
    [[3], [4]],
    [
      [3, 0],
      [4, 0],
    ],
    [
      [0, 0],
      [2, 5],
    ],
  ])
    expect(fisherFreemanHalton(table)).toEqual({ method: exact, table, p: 1 });
});

it("hands a table of millions to the chi-square test, and says so", () => {
  expect(
    fisherFreemanHalton([
      [1e6, 1],
      [1, 1e6],
    ]),
  ).toMatchObject({
    p: null,
    because: "the table holds more than a million cases; use the chi-square test",
  });
});

it("refuses what is not a table of counts", () => {
  const refuse = (table: number[][], message: string): void =>
    expect(() => fisherFreemanHalton(table)).toThrow(new RangeError(`fisherFreemanHalton: ${message}`));
  refuse([], "table must have at least one row and one column");
  refuse([[1, 2], [3]], "table[1] must have 2 columns as the first row has, got 1");
  refuse([[1, -2]], "table[0][1] must be an integer of at least 0, got -2");
  refuse([[1, 0.5]], "table[0][1] must be an integer of at least 0, got 0.5");
  refuse([[0, 0]], "table must hold at least one case, got 0 in every cell");
  expect(() => fisherFreemanHalton([[1, 2]], { seed: -1 })).toThrow(
    new RangeError("fisherFreemanHalton: seed must be an integer from 0 to 2^32 - 1, got -1"),
  );
  expect(() => fisherFreemanHalton([[1, 2]], { simulated: 0 })).toThrow(
    new RangeError("fisherFreemanHalton: simulated must be an integer of at least 1, got 0"),
  );
});
