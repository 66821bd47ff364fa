import { readFileSync } from "node:fs";
import { describe, expect, it, test } from "vitest";
import { countRows } from "../../../src/findings/count-rows.js";
import { countsForPercent } from "../../../src/findings/series/counts-for-percent.js";
import { ownCard } from "../../../src/findings/series/own-card.js";
import { blankCard, type PaperCard } from "../../../src/findings/series/paper-card.js";
import { cardsJson, readCards } from "../../../src/findings/series/read-cards.js";
import { seriesFindings } from "../../../src/findings/series/series-findings.js";
import { buildLedger } from "../../../src/ledger/build-ledger.js";
import { seriesPictures } from "../../../src/charts/pictures/series/series-pictures.js";
import { seriesSections } from "../../../src/report/series/series-sections.js";
import { plainText } from "../../../src/report/text.js";
import { mantelHaenszel } from "../../../src/stats/strata/mantel-haenszel.js";
import { checkDrawing } from "../../charts/check-drawing.js";
import { demoPlan, demoTable } from "../../demo.js";

const bytes = (text: string): Uint8Array => new TextEncoder().encode(text);
const demo = readCards(
  new Uint8Array(readFileSync(new URL("../../../data-demo/published.json", import.meta.url))),
  "published.json",
);
const card = (
  name: string,
  rows: [string, number | null, number | null][],
  more: Partial<PaperCard> = {},
): PaperCard => ({
  ...blankCard(name, []),
  rows: rows.map(([grade, successes, cases]) => ({ grade, technique: "", successes, cases })),
  ...more,
});
const own = async (): Promise<PaperCard> =>
  ownCard(countRows(buildLedger(await demoTable(), demoPlan()), "position"), {
    name: "Our series",
    unit: "limbs",
    definition: "ours",
    lost: 4,
  });
const words = (cards: readonly PaperCard[], options = {}): string =>
  seriesSections(seriesFindings(cards, options))
    .flatMap(({ answer }) => answer.map(plainText))
    .join("\n");

// 49 of 54 (91%), 77% with our mix, our own rate 82%: a worked demonstration computed in R 4.2.2, outside this project.
it("brings series B from 91% to 77% with our grade mix, beside our 82%", async () => {
  const ours = await own();
  const weights = ["I", "II", "III", "IV"].map((grade) => ({
    grade,
    weight: ours.rows.filter((row) => row.grade === grade).reduce((sum, { cases }) => sum + cases!, 0),
  }));
  expect(weights.map(({ weight }) => weight)).toEqual([9, 16, 15, 11]);
  const text = words([ours, demo.cards[1]!], { mix: { of: "our series", weights } });
  expect(text).toContain("Series B reported 49 of 54 (91%); with the grade mix of our series it would be 77%.");
  expect(text).toContain("Our series reported 42 of 51 (82%); with the grade mix of our series it would be 82%.");
});

describe("a page of series", () => {
  it("sets the demo beside each other and pools only when asked", () => {
    const found = seriesFindings(demo.cards);
    expect(found.pooled).toBeNull();
    expect(found.reasonsNotToPool.map(({ kind }) => kind)).toEqual(
      expect.arrayContaining([
        "few series",
        "definitions differ",
        "definition not known",
        "units differ",
        "mixes differ",
      ]),
    );
    expect(words(demo.cards)).toContain("They are not put together unless you ask.");
    expect(words(demo.cards, { pool: true })).toMatch(/The middle series would have [\d.]+% \(95% CI/);
  });
  it.each<[string, PaperCard[]]>([
    ["no series", []],
    ["0 of n", [card("A", [["I", 0, 12]], { lost: 2 })]],
    ["n of n", [card("A", [["I", 12, 12]]), card("B", [["I", 3, 3]])]],
    [
      "a grade missing",
      [
        card("A", [
          ["I", 5, 6],
          ["II", 1, 3],
        ]),
        card("B", [["I", 4, 4]]),
      ],
    ],
    ["cases unknown", [card("A", [["I", null, null]], { lost: 1 })]],
    ["one case", [card("A", [["I", 1, 1]])]],
    [
      "forty series",
      Array.from({ length: 40 }, (_, i) =>
        card(
          `S${i}`,
          [
            ["I", 5 + (i % 4), 9],
            ["II", i % 7, 8],
          ],
          { lost: i % 3 },
        ),
      ),
    ],
  ])("stands with %s", (_, cards) => {
    const found = seriesFindings(cards, { pool: true });
    const walk = (value: unknown): void => {
      if (typeof value === "number") expect(value).not.toBeNaN();
      else if (value && typeof value === "object") Object.values(value).forEach(walk);
    };
    walk(found);
    expect(seriesSections(found)).toHaveLength(6);
    for (const picture of seriesPictures(found)) for (const width of [640, 320]) checkDrawing(picture.drawing(width));
  });
});

it("analyses centres from their counts as from the joined sheets", async () => {
  const ledger = buildLedger(await demoTable(), demoPlan());
  const centre = (odd: boolean) => ({ ...ledger, cases: ledger.cases.filter(({ row }) => row % 2 === (odd ? 1 : 0)) });
  const both = [...countRows(centre(true), "position"), ...countRows(centre(false), "position")];
  const strata = (
    rows: readonly { grade: string | null; technique: string | null; successes: number; cases: number }[],
  ) =>
    ledger.grades.map((grade) => {
      const of = (technique: string) => {
        const cells = rows.filter((row) => row.grade === grade && row.technique === technique);
        return {
          successes: cells.reduce((sum, row) => sum + row.successes, 0),
          trials: cells.reduce((sum, row) => sum + row.cases, 0),
        };
      };
      return { first: of("closed"), second: of("open") };
    });
  expect(mantelHaenszel(strata(both))).toEqual(mantelHaenszel(strata(countRows(ledger, "position"))));
});

describe("cards in files", () => {
  it("come back as they were saved", () => expect(readCards(bytes(cardsJson(demo)), "again.json")).toEqual(demo));
  it("are read from a file of counts", () => {
    const { cards } = readCards(bytes("series,grade,successes,cases\nA,I,3,4\nA,II,not stated,5\n"), "counts.csv");
    expect(cards[0]).toMatchObject({
      name: "A",
      unit: "not stated",
      rows: [
        { grade: "I", successes: 3, cases: 4 },
        { grade: "II", successes: null, cases: 5 },
      ],
    });
  });
  it.each([
    ["{", /^x\.json: is not JSON/],
    ['{"cards":[{"name":"","rows":[]}]}', /cards \[1\] name: must not be empty/],
    [
      '{"cards":[{"name":"A","rows":[{"grade":"I","successes":5,"cases":4}]}]}',
      /cards \[1\] rows \[1\]: successes must be at most the cases/,
    ],
    ['{"cards":[{"name":"A","rows":[{"grade":"I","successes":1.5,"cases":4}]}]}', /successes: must be a whole number/],
    ['{"cards":[{"name":"A","rows":[]},{"name":"A","rows":[]}]}', /must name each series once, "A" stands twice/],
    ['{"cards":[{"name":"A","rows":[],"colour":"red"}]}', /colour: no such entry is known/],
  ])("%s is refused with its place", (text, message) =>
    expect(() => readCards(bytes(text), "x.json")).toThrow(message),
  );
});

describe("counts that print as a percentage", () => {
  it("lists 31 of 37 for 83.8% and no count of 37 for 83.0%", () => {
    expect(countsForPercent("83.8", 40)).toContainEqual({ successes: 31, cases: 37 });
    expect(countsForPercent("83.0", 40).filter(({ cases }) => cases === 37)).toEqual([]);
  });
  it("accepts both neighbours of a tie", () => {
    expect(countsForPercent("12", 40)).toContainEqual({ successes: 5, cases: 40 });
    expect(countsForPercent("13", 40)).toContainEqual({ successes: 5, cases: 40 });
  });
  test("equal a search over every count", () => {
    for (const percent of ["0", "7", "50", "66.7", "99.5", "100"]) {
      const decimals = percent.split(".")[1]?.length ?? 0;
      const all = [];
      for (let cases = 1; cases <= 60; cases++)
        for (let successes = 0; successes <= cases; successes++)
          if (Math.abs((100 * successes) / cases - Number(percent)) <= 0.5 * 10 ** -decimals + 1e-9)
            all.push({ successes, cases });
      expect(countsForPercent(percent, 60)).toEqual(all);
    }
  });
  it("refuses what is no percentage", () => {
    for (const text of ["", "abc", "101", "-3", "12e3"]) expect(() => countsForPercent(text, 10)).toThrow(RangeError);
  });
});
