import { expect, it } from "vitest";
import { belief } from "../../../src/findings/vote/belief.js";
import { noHands, type Ballot, type HandCount } from "../../../src/findings/vote/vote.js";
import { fewestChanged, voteFindings } from "../../../src/findings/vote/vote-findings.js";
import { shiftLines } from "../../../src/report/vote/shift-text.js";
import { expectsText } from "../../../src/report/vote/vote-text.js";

const hands = (at: Readonly<Record<number, number>>, yes = 0, no = 0): HandCount => ({
  expected: noHands.expected.map((_, i) => at[i] ?? 0),
  yes,
  no,
});
/** Ballots: each pair of steps and of answers, "yy" for yes twice. */
const ballots = (said: readonly (readonly [number, number, string])[]): Ballot[] =>
  said.map(([first, second, would], i) => ({
    voter: i + 1,
    before: { step: first, would: would[0] === "y" },
    after: { step: second, would: would[1] === "y" },
  }));
const handsVote = (before: HandCount, after: HandCount) => voteFindings({ kind: "hands", before, after });

it("shows a room where nobody votes as that, without a number", () => {
  const found = handsVote(noHands, noHands);
  expect(found).toMatchObject({ before: { hands: 0, mean: null }, shift: null, paired: null });
  expect(expectsText(found.before)).toBe("No hand yet.");
  expect(shiftLines(found)).toEqual(["Nobody voted before, so there is nothing to compare with."]);
  expect(belief(found.before, { successes: 6, trials: 11 }, "hands").update).toMatchObject({
    because: "nobody has guessed yet",
  });
});

it("takes one hand for what it says, without a spread", () => {
  const found = handsVote(hands({ 8: 1 }, 1), noHands);
  expect(expectsText(found.before)).toBe("The room expects 80% (one hand).");
  expect(shiftLines(found)).toEqual(["Nobody has voted again yet."]);
  const count = { successes: 6, trials: 11 };
  expect(belief(found.before, count, "hands").update).toMatchObject({ because: "one guess has no spread" });
  // Beta(8, 2) and 6 of 11: mean (8 + 6) / (10 + 11).
  expect(belief(found.before, count, { cases: 10 }).update).toMatchObject({ after: { a: 14, b: 7, mean: 14 / 21 } });
});

it("has no curve where all expect the same end of the scale", () => {
  const { before } = handsVote(hands({ 10: 9 }), noHands);
  expect(before.mean).toBe(1);
  expect(belief(before, { successes: 1, trials: 2 }, "hands").update).toMatchObject({
    because: "all guesses are equal, so they have no spread",
  });
  expect(belief(before, { successes: 1, trials: 2 }, { cases: 5 }).update).toMatchObject({ estimate: null });
});

it("never tests hands, however many and however clear", () => {
  const found = handsVote(hands({ 9: 80 }, 80, 0), hands({ 1: 80 }, 0, 80));
  expect(found.paired).toBeNull();
  expect(shiftLines(found).join(" ")).toBe(
    "The room expected 90% and now expects 10%: 80 points lower. Would do it: 80 of 80 before, 0 of 80 after. Hands are not paired: nobody knows who changed, so the change is shown and not tested.",
  );
});

it("tests paired ballots exactly when enough changed: nine of fourteen", () => {
  const found = voteFindings({
    kind: "ballots",
    ballots: ballots([
      ...Array.from({ length: 8 }, () => [8, 5, "yn"] as const),
      [5, 8, "ny"],
      ...Array.from({ length: 5 }, () => [9, 9, "yy"] as const),
    ]),
  });
  // Two-sided exact binomial of 1 in 9: 2 x (1 + 9) / 2^9.
  expect(found.paired!.would.test).toMatchObject({ exact: expect.closeTo(20 / 512, 14) as number });
  expect(shiftLines(found)).toContain(
    "9 of 14 changed their mind: 8 from yes to no, 1 from no to yes (exact McNemar p = 0.039).",
  );
  expect(shiftLines(found).at(-1)).toContain("Shown, not tested: 9 moved to another band");
});

it("shows a tiny room and does not test it, and says the rule", () => {
  const found = voteFindings({
    kind: "ballots",
    ballots: ballots(Array.from({ length: 5 }, () => [8, 8, "yn"] as const)),
  });
  expect(found.paired!.would).toMatchObject({ changed: 5, test: { estimate: null } });
  expect(2 * 0.5 ** (fewestChanged - 1)).toBeGreaterThan(0.05);
  expect(2 * 0.5 ** fewestChanged).toBeLessThan(0.05);
  expect(shiftLines(found).join(" ")).toContain(
    "Shown, not tested: with fewer than 6 changed minds no split of them gives p below 0.05.",
  );
});

it("sets the bands of many voters side by side (Stuart-Maxwell with one pair of bands is (b - c)^2 / (b + c))", () => {
  const found = voteFindings({
    kind: "ballots",
    ballots: ballots([
      ...Array.from({ length: 12 }, () => [8, 5, "yy"] as const),
      ...Array.from({ length: 3 }, () => [5, 8, "yy"] as const),
      ...Array.from({ length: 4 }, () => [9, 10, "nn"] as const),
    ]),
  });
  expect(found.paired!.expected).toMatchObject({ voters: 19, down: 12, up: 7, same: 0, moved: 15 });
  expect(found.paired!.expected.test).toMatchObject({ statistic: 81 / 15, df: 1 });
  expect(shiftLines(found).join(" ")).toContain("0 of 19 changed their mind");
});

it("pairs only those who voted twice", () => {
  const found = voteFindings({
    kind: "ballots",
    ballots: [
      { voter: 3, before: { step: 8, would: true }, after: null },
      { voter: 7, before: { step: null, would: true }, after: { step: 2, would: false } },
    ],
  });
  expect(found.before).toMatchObject({ hands: 1, yes: 2 });
  expect(found.paired).toMatchObject({ would: { changed: 1, voters: { firstOnly: [7] } }, expected: { voters: 0 } });
});

it("refuses counts that are none, steps that are not there, and a voter with two ballots", () => {
  expect(() => handsVote({ ...noHands, yes: -1 }, noHands)).toThrow(
    new RangeError("voteFindings: hands must be a whole number of at least 0, got -1"),
  );
  const one = { voter: 1, before: { step: 11, would: null }, after: null };
  expect(() => voteFindings({ kind: "ballots", ballots: [one] })).toThrow(
    new RangeError("voteFindings: a step must be from 0 to 10, got 11"),
  );
  const twice = [
    { voter: 4, before: null, after: null },
    { voter: 4, before: null, after: null },
  ];
  expect(() => voteFindings({ kind: "ballots", ballots: twice })).toThrow(
    new RangeError("voteFindings: each voter must have one ballot, got 4 twice"),
  );
});
