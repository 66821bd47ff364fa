import fc from "fast-check";
import { expect, it } from "vitest";
import { quartiles } from "../../../src/stats/measurements/quartiles.js";
import { r } from "../../r.js";

it("equals R's quantile of type 7 on 200 samples", async () => {
  const samples = fc.sample(fc.array(fc.integer({ min: -50, max: 200 }), { minLength: 1, maxLength: 25 }), {
    numRuns: 200,
    seed: 7,
  });
  const lists = samples.map((values) => `c(${values.join(",")})`).join(",");
  const expected = await r(`unlist(lapply(list(${lists}), quantile, type = 7, names = FALSE))`);
  const found = samples.flatMap((values) => {
    const { low, q1, median, q3, high } = quartiles(values);
    return [low, q1, median, q3, high];
  });
  found.forEach((value, i) => expect(value).toBeCloseTo(expected[i]!, 10));
});

it("needs a value, and finite ones", () => {
  expect(() => quartiles([])).toThrow(RangeError);
  expect(() => quartiles([1, NaN])).toThrow(RangeError);
});
