// 100,000 rows by 20 columns: the goal is 5 s and 1 GB on a quiet machine. Processor time is measured, with room for a
// busy one; a step that grows with the square of the rows would miss it by far.
import { expect, test } from "vitest";
import { readCases } from "../../src/cases/read-cases.js";
import { readSheet } from "../../src/cases/read-sheet.js";
import { largeSheet } from "../large-sheet.js";

test("reads 100,000 rows in linear time and bounded memory, telling how far it is", { timeout: 120_000 }, async () => {
  const bytes = new TextEncoder().encode(largeSheet(100_000));
  const before = process.cpuUsage();
  const told: number[] = [];
  const table = readCases(await readSheet(bytes, "large.csv"), { onProgress: (done) => told.push(done) });
  const { user, system } = process.cpuUsage(before);
  expect(table.cases).toHaveLength(100_000);
  expect(table.cells).toEqual({ understood: 1_900_000, asked: 0, setAside: 100_020 });
  expect(told.length).toBeGreaterThan(40);
  expect(told.every((share, i) => share > (told[i - 1] ?? 0))).toBe(true);
  expect(told.at(-1)).toBe(1);
  expect((user + system) / 1e6).toBeLessThan(20);
  expect(process.memoryUsage().heapUsed).toBeLessThan(2 ** 30);
});
