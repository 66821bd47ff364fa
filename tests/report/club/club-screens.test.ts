import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import abstract from "../../../notebooks/journal-club/abstract.txt?raw";
import { clubPictures } from "../../../src/charts/pictures/club/club-pictures.js";
import { checkText } from "../../../src/claims/check-text.js";
import { appraisalHints } from "../../../src/findings/appraisal/appraisal-hints.js";
import { clubFindings, firstSliders, type ClubOptions } from "../../../src/findings/club/club-findings.js";
import { gradeMixPlay, highSteps } from "../../../src/findings/club/grade-mix-play.js";
import { mostBothHigh, prevalencePlay } from "../../../src/findings/club/prevalence-play.js";
import { widthPlay } from "../../../src/findings/club/width-play.js";
import type { PaperCard } from "../../../src/findings/series/paper-card.js";
import { readCards } from "../../../src/findings/series/read-cards.js";
import { noHands, type Vote } from "../../../src/findings/vote/vote.js";
import { appraisalSection } from "../../../src/report/appraisal/appraisal-section.js";
import { clubScreens } from "../../../src/report/club/club-screens.js";
import { handout } from "../../../src/report/club/handout.js";
import { plainText } from "../../../src/report/text.js";
import { checkDrawing } from "../../charts/check-drawing.js";

const { cards } = readCards(readFileSync("data-demo/published.json"), "published.json");
const nobody: Vote = { kind: "hands", before: noHands, after: noHands };
const options: ClubOptions = {
  series: null,
  grade: "IV",
  beliefWidth: "hands",
  sliders: firstSliders,
  level: 0.95,
  next: 20,
};
const voted: Vote = {
  kind: "ballots",
  ballots: Array.from({ length: 14 }, (_, i) => ({
    voter: i + 1,
    before: { step: 6 + (i % 4), would: true },
    after: { step: 3 + (i % 3), would: i < 5 },
  })),
};
const words = (id: string, all = clubFindings(cards, nobody, options)): string =>
  clubScreens(all)
    .find((screen) => screen.id === id)!
    .answer.map(plainText)
    .join(" ");

describe("the screens", () => {
  it("take twenty minutes", () => {
    const screens = clubScreens(clubFindings(cards, nobody, options));
    expect(screens.reduce((sum, { minutes }) => sum + minutes, 0)).toBe(20);
    expect(screens.every(({ notes }) => notes.length > 0)).toBe(true);
  });

  it("say what the invented series shows", () => {
    expect(words("claim")).toContain("Series A reports 31 of 37 limbs: 84% (95% CI 69 to 92).");
    // Wilson limits of 4 in 7, by hand: 0.2505 and 0.8418.
    expect(words("sure")).toContain("4 of 7 (grade IV in Series A) is compatible with 25% to 84% (95%).");
    expect(words("who")).toBe(
      "37 of 40 eligible cases were followed (93%). With 3 lost cases counted either way, 31 of 37 (84%) becomes anything from 78% to 85%.",
    );
  });

  it("compare the paper's own techniques within grades, and say how the lost could turn them", () => {
    const all = clubFindings(cards, nobody, { ...options, series: "Series C" });
    // By the formulas of Newcombe and of Sato 1989 in Python: 5.50 (-8.9 to 24.3), and -3.9 (-23.6 to 15.8).
    expect(words("fair", all)).toContain(
      "Series C: closed 67 of 79 (85%), open 23 of 29 (79%): a difference of 5 points (95% CI −9 to 24); within grades it is −4 (95% CI −24 to 16), grade I aside.",
    );
    expect(words("who", all)).toContain("Missing: 7 closed, 2 open. What became of them can turn the order");
    // What stays on the last screen is the rate with the lost either way, not the grid.
    expect(words("take-home", all)).toContain("With 9 lost cases counted either way, 90 of 108");
    expect(words("take-home", all)).not.toContain("Missing:");
    const split = clubFindings(cards, nobody, {
      ...options,
      series: "Series C",
      sliders: { ...firstSliders, lost: 3, lostFirst: 3 },
    });
    expect(words("who", split)).toContain("Missing: 3 closed, 0 open. ");
    expect(words("fair")).not.toContain("Series A");
  });

  it("tell the two teams' reversal, and that one grade mix undoes it", () => {
    expect(words("fair")).toBe(
      "Team 1 succeeds in 70% and Team 2 in 60%, though Team 2 is better in every grade it shares with Team 1. With the mix of Team 1: 70% and 80%.",
    );
    const none = clubFindings(cards, nobody, { ...options, sliders: { ...firstSliders, high: 40 } });
    expect(words("fair", none)).toContain("with one mix the two cannot be compared");
  });

  it("reproduce 95% agreement with a kappa of 0.38: two positives in 60", () => {
    const rare = clubFindings(cards, nobody, { ...options, sliders: { ...firstSliders, bothHigh: 1 } });
    expect(words("grading", rare)).toContain("agree on 57 of 60 radiographs (95%)");
    expect(words("grading", rare)).toContain("Kappa is 0.38");
  });

  it("work without any card, and with a card that states nothing", () => {
    const blank: PaperCard = { ...cards[0]!, name: "Blank", lost: null, rows: [] };
    for (const list of [[], [blank]]) {
      const found = clubFindings(list, nobody, options);
      expect(clubScreens(found)).toHaveLength(11);
      for (const { drawing } of clubPictures(found)) checkDrawing(drawing());
      expect(handout(found, { takeHome: "", checked: null, caution: "caution" }).title).toMatch(/^Journal club/);
    }
  });
});

describe("the claim check", () => {
  const screenOf = (text: string) =>
    clubScreens(clubFindings(cards, nobody, options), { takeHome: "", checked: checkText(text) }).find(
      ({ id }) => id === "claim-check",
    )!;

  it("finds the slips of the invented abstract: 31 of 37 is 84%, and 0 of 37 allows more than 0%", () => {
    const [tally, ...slips] = screenOf(abstract).answer.map(plainText);
    expect(tally).toBe("6 numbers read: 4 hold and 2 fail.");
    expect(slips[0]).toContain("31 of 37");
    expect(slips[0]).toMatch(/84(\.\d+)?%/);
    expect(slips).toHaveLength(2);
  });

  it("gives every number its three lights in the table, and says so when there is none", () => {
    const { tables, answer } = screenOf("Success was achieved in 6 of 6 fractures (100%).");
    expect(answer.map(plainText)[0]).toMatch(/ read: .*hold/);
    expect(tables[0]!.rows.length).toBeGreaterThan(0);
    expect(screenOf("Nothing was counted.").answer.map(plainText)).toEqual(["No number was read in the text."]);
  });

  it("stands on the handout, with the first slips", () => {
    const printed = handout(clubFindings(cards, nobody, options), {
      takeHome: "",
      checked: checkText(abstract),
      caution: "caution",
    });
    expect(printed.lines.join("\n")).toContain("Its text: ");
    expect(printed.lines.join("\n")).toContain("31 of 37");
  });
});

describe("the pictures", () => {
  it.each([
    ["nobody", nobody],
    ["ballots", voted],
    [
      "one hand",
      { kind: "hands", before: { ...noHands, expected: noHands.expected.map((_, i) => +(i === 8)) }, after: noHands },
    ],
    [
      "a hall",
      { kind: "hands", before: { expected: noHands.expected.map(() => 30), yes: 300, no: 1 }, after: noHands },
    ],
  ] as const)("compute nothing and name only fields that are there, narrow and wide: %s", (_, vote) => {
    for (const { drawing } of clubPictures(clubFindings(cards, vote, { ...options, beliefWidth: { cases: 10 } })))
      for (const width of [256, 860]) checkDrawing(drawing(width));
  });

  it("draw a mark a hand, in the place of its step", () => {
    const picture = clubPictures(clubFindings(cards, voted, options)).find(({ name }) => name === "vote-shift")!;
    expect(picture.drawing().rows["marks"]).toHaveLength(28);
    const would = clubPictures(clubFindings(cards, voted, options)).find(({ name }) => name === "vote-would")!;
    expect(would.drawing().rows["crosses"]).toHaveLength(9);
  });
});

describe("the plays", () => {
  it("leave the share within a grade where it is, wherever the mix slider stands", () => {
    for (const high of highSteps) {
      const [first, second] = gradeMixPlay(high, 0.95).teams;
      expect(first!.all).toMatchObject({ successes: 28, cases: 40 });
      if (second!.low) expect(second!.low.estimate).toBeCloseTo(0.9, 14);
      if (second!.high) expect(second!.high.estimate).toBeCloseTo(0.5, 14);
    }
    expect(highSteps.map((high) => gradeMixPlay(high, 0.95).misleads)).toEqual([false, false, true, true, true]);
    expect(() => gradeMixPlay(7, 0.95)).toThrow(
      new RangeError("gradeMixPlay: high must be one of 0, 10, 20, 30, 40, got 7"),
    );
  });

  it("narrow the interval with every step of the slider", () => {
    let last = 1;
    for (let cases = 5; cases <= 200; cases += 5) {
      const { width, fourfold } = widthPlay(cases, 0.95);
      expect(width).toBeLessThan(last);
      expect(fourfold.width).toBeLessThan(width);
      last = width;
    }
    expect(() => widthPlay(7, 0.95)).toThrow(RangeError);
  });

  it("keep the agreement and let kappa fall towards either end", () => {
    const kappas = Array.from({ length: mostBothHigh + 1 }, (_, i) => prevalencePlay(i, 0.95));
    for (const { agreement, bothHigh, bothLow, differ } of kappas) {
      expect(agreement).toMatchObject({ successes: 57, cases: 60 });
      expect(bothHigh + bothLow + differ).toBe(60);
    }
    const value = (i: number): number => kappas[i]!.kappa.estimate ?? Number.NaN;
    expect(value(28)).toBeGreaterThan(value(5));
    expect(value(5)).toBeGreaterThan(value(1));
    expect(value(1)).toBeGreaterThan(value(0));
    expect(() => prevalencePlay(58, 0.95)).toThrow(RangeError);
  });
});

describe("the appraisal", () => {
  const { chosen } = clubFindings(cards, nobody, options);
  const none = { first: null, second: null };

  it("counts loss and shared years, and adds nothing up", () => {
    const periods = { first: { from: 2001, to: 2005 }, second: { from: 2004, to: 2010 } };
    const section = appraisalSection(chosen, {
      answers: { aim: { verdict: "2", page: "3", quotation: "we asked whether" } },
      periods,
      level: 0.95,
    });
    const rows = section.tables[0]!.rows;
    expect(rows[0]!.slice(1, 4)).toEqual(["2", "3", "we asked whether"]);
    expect(rows[6]!.at(-1)).toBe("Counted: 3 of 40 lost (8%).");
    expect(rows[9]!.at(-1)).toBe("Counted: 2 of 10 years shared by both groups.");
    expect(section.answer.map(plainText)).toEqual(["Series A: 1 of 22 questions answered, by people, not by the kit."]);
    expect(JSON.stringify(section)).not.toMatch(/\b(total|high quality|low quality|out of 24|out of 16)\b/i);
  });

  it("sets the grades of two techniques side by side when the card tells them apart", () => {
    const row = (grade: string, technique: string, cases: number) => ({ grade, technique, successes: 0, cases });
    const card = {
      ...chosen!.card,
      rows: [row("I", "closed", 3), row("I", "open", 1), row("II", "closed", 1), row("II", "open", 3)],
    };
    const { baseline } = appraisalHints({ ...chosen!, card }, none, 0.95);
    expect(baseline!.map(({ grades }) => grades.map(({ share }) => share.estimate))).toEqual([
      [0.75, 0.25],
      [0.25, 0.75],
    ]);
  });

  it("counts no shared year where the periods are apart, and nothing where they are not typed", () => {
    const apart = { first: { from: 2001, to: 2003 }, second: { from: 2004, to: 2006 } };
    expect(appraisalHints(chosen, apart, 0.95).overlap).toEqual({ shared: 0, all: 6 });
    expect(appraisalHints(null, none, 0.95)).toEqual({ loss: null, overlap: null, baseline: null });
  });
});
