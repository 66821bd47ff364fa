import { expect, it } from "vitest";
import { chiSquareUpper } from "../../src/numeric/chi-square.js";
import { random } from "../../src/numeric/random.js";

// First outputs of the Mersenne Twister for this seed: numpy 1.24, RandomState(20261124).randint(0, 2**32, 6, uint64).
const words = [3510067493, 4082666190, 1209274, 2176841102, 3734130360, 1140879355];

it("draws 53 bits from the published generator", () => {
  const stream = random(20261124);
  for (let i = 0; i < words.length; i += 2) {
    const expected = (words[i]! % 2 ** 26) / 2 ** 26 + (words[i + 1]! % 2 ** 27) / 2 ** 53;
    expect(stream.uniform()).toBe(expected);
  }
});

it("repeats its stream for a seed and changes it with the seed", () => {
  const draws = (seed: number): number[] => Array.from({ length: 20 }, random(seed).uniform);
  expect(draws(1)).toEqual(draws(1));
  expect(draws(1)).not.toEqual(draws(2));
});

it("draws integers evenly, also where the range does not divide the generator's", () => {
  const stream = random(7);
  for (const n of [1, 2, 3, 7, 100]) {
    const counts = new Array<number>(n).fill(0);
    for (let i = 0; i < 1000 * n; i++) counts[stream.below(n)]!++;
    const statistic = counts.reduce((sum, count) => sum + (count - 1000) ** 2 / 1000, 0);
    if (n > 1) expect(chiSquareUpper(statistic, n - 1)).toBeGreaterThan(1e-4);
    else expect(counts).toEqual([1000]);
  }
  const large = Array.from({ length: 200 }, () => stream.below(2 ** 53 - 1));
  expect(large.every((value) => Number.isSafeInteger(value) && value >= 0)).toBe(true);
  expect(Math.max(...large)).toBeGreaterThan(2 ** 52);
});

it("shuffles every order equally often and leaves its argument alone", () => {
  const stream = random(11);
  const items = ["a", "b", "c", "d"] as const;
  const seen = new Map<string, number>();
  for (let i = 0; i < 24_000; i++) {
    const order = stream.shuffled(items).join("");
    seen.set(order, (seen.get(order) ?? 0) + 1);
  }
  expect(items.join("")).toBe("abcd");
  expect(seen.size).toBe(24);
  const statistic = [...seen.values()].reduce((sum, count) => sum + (count - 1000) ** 2 / 1000, 0);
  expect(chiSquareUpper(statistic, 23)).toBeGreaterThan(1e-4);
});

it("refuses a seed or a range out of range", () => {
  expect(() => random(-1)).toThrow(new RangeError("random: seed must be an integer from 0 to 4294967295, got -1"));
  expect(() => random(1).below(0)).toThrow(
    new RangeError("random: below must be given an integer of at least 1, got 0"),
  );
});
