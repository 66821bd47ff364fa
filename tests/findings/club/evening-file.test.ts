import { readFileSync } from "node:fs";
import { expect, it } from "vitest";
import { eveningJson, readEvening, type EveningFile } from "../../../src/findings/club/evening-file.js";
import { readCards } from "../../../src/findings/series/read-cards.js";
import { noHands } from "../../../src/findings/vote/vote.js";

const bytes = (text: string): Uint8Array => new TextEncoder().encode(text);
const { cards } = readCards(readFileSync("data-demo/published.json"), "published.json");
const evening: EveningFile = {
  cards,
  note: "Invented series.",
  series: "Series B",
  grade: "IV",
  text: "31 of 37 (86%)",
  takeHome: "ask for the grades",
  votes: {
    kind: "ballots",
    before: { ...noHands, yes: 3 },
    after: noHands,
    ballots: [
      { voter: 7, before: { step: 8, would: true }, after: { step: null, would: false } },
      { voter: 9, before: null, after: { step: 2, would: null } },
    ],
  },
  appraisal: {
    aim: { verdict: "2", page: "1", quotation: "We asked whether" },
    inclusion: { verdict: "unclear", page: "", quotation: "" },
  },
  periods: { first: { from: 2011, to: 2015 }, second: null },
};

it("comes back as it was saved", () => {
  expect(readEvening(bytes(eveningJson(evening)), "evening.json")).toEqual(evening);
});

it("is told from cards, counts and what is no JSON", () => {
  expect(readEvening(readFileSync("data-demo/published.json"), "published.json")).toBeNull();
  expect(readEvening(bytes("series,grade,successes,cases\n"), "counts.csv")).toBeNull();
  expect(readEvening(bytes("[1]"), "list.json")).toBeNull();
});

const voter = { voter: 7, before: null, after: null };
it.each<[string, object, string]>([
  ["another version", { evening: 2 }, "evening: must be 1"],
  [
    "a step that is none",
    { votes: { ...evening.votes, ballots: [{ ...voter, before: { step: 11, would: null } }] } },
    "votes ballots [1] before step: must be at most 10",
  ],
  [
    "a voter with two ballots",
    { votes: { ...evening.votes, ballots: [voter, voter] } },
    "votes ballots: must hold one ballot a voter",
  ],
  [
    "too few steps",
    { votes: { ...evening.votes, before: { expected: [1], yes: 0, no: 0 } } },
    "votes before expected: must hold 11 counts",
  ],
  ["an unknown entry", { colour: "red" }, "colour: no such entry is known"],
  [
    "an answer of the other group",
    { appraisal: { aim: { verdict: "yes", page: "", quotation: "" } } },
    "appraisal aim verdict: must be one of 0, 1, 2, or empty",
  ],
  ["a series named twice", { cards: [cards[0], cards[0]] }, 'must name each series once, "Series A" stands twice'],
])("is refused with its place for %s", (_, part, message) => {
  const text = JSON.stringify({ evening: 1, ...evening, ...part });
  expect(() => readEvening(bytes(text), "evening.json")).toThrow(message);
});
