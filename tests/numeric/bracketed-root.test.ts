import { expect, it, test } from "vitest";
import { bracketedRoot } from "../../src/numeric/bracketed-root.js";

const near = (actual: number, expected: number): void =>
  expect(Math.abs(actual - expected)).toBeLessThanOrEqual(5e-16 * Math.abs(expected));

test.each([
  { name: "x^2 - 2", f: (x: number) => x * x - 2, low: 0, high: 2, root: Math.SQRT2 },
  { name: "ln x", f: Math.log, low: 1e-300, high: 1e300, root: 1 },
  { name: "a step far from linear", f: (x: number) => x ** 25 - 1e-10, low: 0, high: 1e6, root: 10 ** -0.4 },
  { name: "a falling function", f: (x: number) => Math.exp(-x) - 0.5, low: -50, high: 700, root: Math.LN2 },
  { name: "a root near the smallest numbers", f: (x: number) => x - 1e-290, low: 0, high: 1, root: 1e-290 },
  { name: "a negative root", f: (x: number) => x ** 3 + 27, low: -1e9, high: 1, root: -3 },
])("finds the root of $name to the last digits", ({ f, low, high, root }) => {
  near(bracketedRoot(f, { low, high }), root);
});

it("stops where the sign changes when the function jumps", () => {
  const root = bracketedRoot((x) => (x < 1 / 3 ? -1 : 1), { low: 0, high: 1 });
  near(root, 1 / 3);
});

it("returns an end that is a root", () => {
  expect(bracketedRoot((x) => x, { low: 0, high: 1 })).toBe(0);
  expect(bracketedRoot((x) => x - 1, { low: 0, high: 1 })).toBe(1);
});

it("needs few evaluations for a smooth function", () => {
  let calls = 0;
  bracketedRoot((x) => (calls++, Math.exp(x) - 3), { low: 0, high: 2 });
  expect(calls).toBeLessThan(16);
});

it("says what is wrong with a bracket", () => {
  expect(() => bracketedRoot((x) => x, { low: 1, high: 0 })).toThrow(
    new RangeError("bracketedRoot: low must be below high, both finite, got 1 and 0"),
  );
  expect(() => bracketedRoot((x) => x, { low: 1, high: 2 })).toThrow(
    new RangeError("bracketedRoot: f must have opposite signs at low and high, got 1 and 2"),
  );
  expect(() => bracketedRoot((x) => (x === 0 ? -1 : x === 1 ? 1 : NaN), { low: 0, high: 1 })).toThrow(/got NaN at/);
});
