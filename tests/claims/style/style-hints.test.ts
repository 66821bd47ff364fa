import { expect, it } from "vitest";
import { checkText } from "../../../src/claims/check-text.js";

const text =
  "Wiring prevented loss of position. There was a trend towards fewer losses. Success was significantly more frequent.";

it("remarks on causal verbs, trends and significance without an interval, when asked", () => {
  const { styleHints } = checkText(text, { style: true });
  expect(styleHints!.map((hint) => hint.text)).toEqual(["prevented", "trend towards", "significantly"]);
  for (const { start, end, text: phrase } of styleHints!) expect(text.slice(start, end)).toBe(phrase);
});

it("is off by default and changes no verdict", () => {
  expect("styleHints" in checkText(text)).toBe(false);
  expect(checkText(text, { style: true }).claims).toEqual(checkText(text).claims);
});

it("says nothing of significance with its interval, nor of hedged wording", () => {
  const sound =
    "The difference was significant (20 percentage points, 95% CI 4 to 36). Whether wiring prevents loss is unknown.";
  expect(checkText(sound, { style: true }).styleHints).toEqual([]);
});
