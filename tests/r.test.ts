import { expect, it } from "vitest";
import { r } from "./r.js";

it("answers in full double precision, infinities and NaN included", async () => {
  const [a, b, c, d] = await r("c(1/3, Inf, NaN, binom.test(3, 10)$p.value)");
  expect(a).toBe(1 / 3);
  expect(b).toBe(Infinity);
  expect(c).toBeNaN();
  expect(d).toBeCloseTo(0.34375, 12);
});

it("passes R's own message on", async () => {
  await expect(r("stop('no such thing')")).rejects.toThrow("no such thing");
});
