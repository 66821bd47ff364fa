import { expect, test } from "vitest";
import { failing, markedSentences } from "./marked-sentences.js";

const lines = markedSentences("phrasings-of-claims.txt");
const accused = (text: string): boolean => failing(text).length > 0;

test("accuses no sound phrasing", () => {
  expect(lines.filter(({ sound }) => sound).length).toBeGreaterThan(70);
  expect(lines.filter(({ sound, text }) => sound && accused(text))).toEqual([]);
});

test("finds every planted error among the phrasings", () => {
  expect(lines.filter(({ sound, text }) => !sound && !accused(text))).toEqual([]);
});
