import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { checkText } from "../../src/claims/check-text.js";

const lines = readFileSync(new URL("../reference/phrasings-of-claims.txt", import.meta.url), "utf8")
  .split("\n")
  .filter((line) => /^[+-] /.test(line))
  .map((line) => ({
    sound: line.startsWith("+"),
    text: line.slice(2).replaceAll("\\n", "\n").replaceAll("\\t", "\t"),
  }));
const accused = (text: string): boolean =>
  checkText(text).claims.some((claim) => [claim.arithmetic, claim.unit, claim.conclusion].includes("fails"));

test("accuses no sound phrasing", () => {
  expect(lines.filter(({ sound }) => sound).length).toBeGreaterThan(70);
  expect(lines.filter(({ sound, text }) => sound && accused(text))).toEqual([]);
});

test("finds every planted error among the phrasings", () => {
  expect(lines.filter(({ sound, text }) => !sound && !accused(text))).toEqual([]);
});
