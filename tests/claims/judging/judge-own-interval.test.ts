import { expect, it } from "vitest";
import { checkText } from "../../../src/claims/check-text.js";
import { r } from "../../r.js";

const failing = (text: string) => checkText(text).claims.filter(({ arithmetic }) => arithmetic === "fails");

it("accuses no exact odds ratio of R for being lopsided", async () => {
  // Conditional estimates with exact limits of R's fisher.test, small and uneven groups among them.
  const values = await r(`unlist(lapply(c(6, 11, 23, 60, 200), function(m) lapply(c(8, 25, 90), function(n)
    lapply(unique(round(c(1, m * c(.2, .5, .8), m - 1))), function(a) lapply(unique(round(c(1, n * c(.1, .5, .9), n - 1))), function(b) {
      f <- fisher.test(matrix(c(a, m - a, b, n - b), 2)); c(f$estimate, f$conf.int) })))))`);
  const texts = Array.from({ length: values.length / 3 }, (_, i) => values.slice(3 * i, 3 * i + 3)).map(
    ([estimate, low, high]) =>
      `The odds ratio was ${estimate!.toFixed(2)} (95% CI ${low!.toFixed(2)} to ${high!.toFixed(2)}).`,
  );
  expect(texts.length).toBeGreaterThan(250);
  expect(texts.filter((text) => failing(text).length > 0)).toEqual([]);
});

it("says where a ratio would lie in its interval", () => {
  expect(failing("The odds ratio was 2.0 (95% CI 1.1 to 2.9).")[0]!.because).toBe(
    "The middle of 1.1 to 2.9 is 1.79 in logarithms, as the usual interval of a ratio has it, not 2.0. Which number is right?",
  );
});
