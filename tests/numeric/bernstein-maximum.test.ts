import { expect, it, test } from "vitest";
import { bernsteinMaximum } from "../../src/numeric/bernstein-maximum.js";
import { numbers } from "../numbers.js";

test("a single coefficient peaks at i/n with the binomial probability of i there", () => {
  for (const [i, n] of [
    [1, 2],
    [3, 10],
    [40, 50],
  ] as const) {
    const { value, at } = bernsteinMaximum(Array.from({ length: n + 1 }, (_, j) => (j === i ? 1 : 0)));
    let ways = 1;
    for (let j = 1; j <= i; j++) ways *= (n - j + 1) / j;
    expect(at).toBeCloseTo(i / n, 7);
    expect(value).toBeCloseTo(ways * (i / n) ** i * (1 - i / n) ** (n - i), 13);
  }
});

test("no point of a dense grid lies above the maximum of 300 random polynomials, and one lies next to it", () => {
  const random = numbers(1912);
  for (let trial = 0; trial < 300; trial++) {
    const coefficients = Array.from({ length: random(1, 40) }, () => random(0, 1000) / 1000);
    const { value } = bernsteinMaximum(coefficients);
    let highest = 0;
    for (let i = 0; i <= 400; i++) highest = Math.max(highest, deCasteljau(coefficients, i / 400));
    expect(highest).toBeLessThanOrEqual(value * (1 + 1e-12));
    expect(highest).toBeGreaterThan(value * 0.99);
  }
});

it("takes constants, slopes and zeros at an end", () => {
  expect(bernsteinMaximum([0.25, 0.25, 0.25]).value).toBe(0.25);
  expect(bernsteinMaximum([0.1, 0.2, 0.9])).toEqual({ value: 0.9, at: 1 });
  expect(bernsteinMaximum([0.5])).toEqual({ value: 0.5, at: 0 });
  expect(bernsteinMaximum([0, 0, 0]).value).toBe(0);
});

function deCasteljau(coefficients: readonly number[], at: number): number {
  let row = coefficients;
  while (row.length > 1) row = row.slice(1).map((next, i) => row[i]! * (1 - at) + next * at);
  return row[0]!;
}
