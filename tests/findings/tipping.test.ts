import { beforeAll, describe, expect, it, test } from "vitest";
import { cardTechniques } from "../../src/findings/series/card-techniques.js";
import type { CardRow, PaperCard } from "../../src/findings/series/paper-card.js";
import { blankCard } from "../../src/findings/series/paper-card.js";
import { tipping, type Tipping } from "../../src/findings/tipping.js";
import type { Findings } from "../../src/findings/types.js";
import { sectionPictures } from "../../src/charts/section-pictures.js";
import { tippingMarks } from "../../src/charts/tipping-marks.js";
import { sections } from "../../src/report/sections.js";
import { tippingTable, tippingText } from "../../src/report/tipping-text.js";
import { plainText, spanText } from "../../src/report/text.js";
import { checkDrawing } from "../charts/check-drawing.js";
import { demoFindings } from "../demo.js";
import { r } from "../r.js";

const found = (...[first, second]: readonly (readonly [number, number, number])[]): Tipping => {
  const group = (name: string, [successes, trials, lost]: readonly [number, number, number]) => ({
    name,
    successes,
    trials,
    lost,
  });
  const made = tipping(group("closed", first!), group("open", second!), 0.95);
  if ("estimate" in made) throw new Error(made.because);
  return made;
};

test("every cell is the difference that R gives with so many of the missing failed", async () => {
  const { cells } = found([35, 40, 3], [7, 11, 2]);
  const expected = await r(`{
    w <- function(x, n) prop.test(x, n, correct = FALSE)$conf.int
    unlist(lapply(0:3, function(a) lapply(0:2, function(b) {
      x <- c(35 + 3 - a, 7 + 2 - b); n <- c(43, 13); p <- x / n; one <- w(x[1], n[1]); two <- w(x[2], n[2]); d <- p[1] - p[2]
      c(d, d - sqrt((p[1] - one[1])^2 + (two[2] - p[2])^2), d + sqrt((one[2] - p[1])^2 + (p[2] - two[1])^2)) }))) }`);
  const ours = cells.flat().flatMap(({ difference, interval }) => [difference, interval.low, interval.high]);
  expect(ours).toHaveLength(36);
  ours.forEach((value, k) => expect(value).toBeCloseTo(expected[k]!, 10));
});

describe("the words", () => {
  it.each([
    [found([40, 40, 1], [2, 11, 1]), "Whatever became of them, closed stays ahead, by "],
    [found([2, 11, 1], [40, 40, 1]), "Whatever became of them, open stays ahead, by "],
    [found([8, 10, 3], [8, 10, 3]), "What became of them can turn the order, from "],
  ])("say who stays ahead, or that the order can turn (%#)", (grid, said) => expect(tippingText(grid)).toContain(said));

  it("count the outcomes whose interval excludes 0", () => {
    expect(tippingText(found([40, 40, 1], [2, 11, 1]))).toContain("the interval excludes 0 every time");
    expect(tippingText(found([8, 10, 1], [8, 10, 1]))).toContain("the interval includes 0 every time");
    const mixed = found([35, 40, 3], [7, 11, 1]);
    const outside = mixed.cells.flat().filter(({ interval: { low, high } }) => low > 0 || high < 0).length;
    expect(tippingText(mixed)).toContain(`the interval excludes 0 in ${outside} of 8 outcomes`);
    expect(tippingTable(mixed).rows).toHaveLength(4);
  });
});

it.each([
  [[0, 0, 3] as const, [1, 2, 1] as const, "not both techniques were used"],
  [[1, 2, 0] as const, [1, 2, 0] as const, "nobody of either technique is missing"],
  [[1, 2, 40] as const, [1, 2, 40] as const, "too many are missing to try every outcome (40 closed, 40 open)"],
])("says why there is no grid (%#)", (first, second, because) => {
  expect(() => found(first, second)).toThrow(because);
});

it("draws a mark an outcome at any width, also where one technique lost nobody", () => {
  for (const grid of [found([35, 40, 3], [7, 11, 0]), found([18, 20, 19], [9, 12, 19])])
    for (const width of [256, 640]) {
      const drawing = tippingMarks(grid, { width });
      checkDrawing(drawing);
      expect(drawing.rows["marks"]).toHaveLength((grid.first.lost + 1) * (grid.second.lost + 1));
      for (const { x } of drawing.rows["marks"] as unknown as { x: number }[]) expect(x).toBeLessThan(width);
    }
});

describe("the invented cohort", () => {
  let demo: Findings;
  beforeAll(async () => {
    demo = await demoFindings();
  });

  it("has three closed and one open among its four missing, whom a reader can open", () => {
    const grid = demo.missing.tipping;
    if ("estimate" in grid) throw new Error(grid.because);
    expect([...grid.missing.closed, ...grid.missing.open].toSorted()).toEqual(demo.missing.lost.toSorted());
    expect([grid.first.lost, grid.second.lost]).toEqual([3, 1]);
    expect([grid.first.successes, grid.first.trials]).toEqual([35, 40]);
  });

  it("says so, with its table and its picture", () => {
    const section = sections(demo).find(({ id }) => id === "missing")!;
    expect(section.answer.map(plainText).join(" ")).toContain(
      "Missing: 3 closed first, 1 open first. Whatever became of them, closed first stays ahead, by 15 to 30 points; the interval excludes 0 in 2 of 8 outcomes.",
    );
    // As analysed the difference is 24 (−1 to 53): no cell repeats it, the missing are counted in.
    expect(section.tables[2]!.rows[0]!.map(spanText)).toEqual([
      "0 of 3 closed first failed",
      "22 (−2 to 50)",
      "30 (4 to 57)",
    ]);
    expect(
      sectionPictures(demo)
        .filter((one) => one.section === "missing")
        .map(({ name }) => name),
    ).toEqual(["missing", "tipping"]);
  });
});

describe("the techniques of a card", () => {
  const card = (...rows: readonly (readonly [string, string, number | null, number | null])[]): PaperCard => ({
    ...blankCard("Paper", []),
    rows: rows.map(([grade, technique, successes, cases]): CardRow => ({ grade, technique, successes, cases })),
  });

  it("are compared crude and within grades as R does", async () => {
    const made = cardTechniques(
      card(
        ["II", "closed", 9, 10],
        ["II", "open", 3, 3],
        ["IV", "closed", 2, 6],
        ["IV", "open", 8, 12],
        ["I", "closed", 5, 5],
      ),
      0.95,
    );
    if ("because" in made || "because" in made.within) throw new Error("not estimable");
    const [crude, within] = await r(`{
      a <- c(9, 2); n <- c(10, 6); b <- c(3, 8); m <- c(3, 12); w <- n * m / (n + m)
      c(16 / 21 - 11 / 15, sum(w * (a / n - b / m)) / sum(w)) }`);
    expect(made.crude.difference).toBeCloseTo(crude!, 13);
    expect(made.within.difference).toBeCloseTo(within!, 13);
    expect(made.oneWay).toEqual(["I"]);
  });

  it.each([
    [card(["I", "", 5, 5]), "the card does not tell two techniques apart"],
    [card(["I", "closed", 5, 5], ["I", "open", null, 5]), "counts are not stated"],
    [card(["I", "closed", 5, 5], ["I", "open", 0, 0]), "one of the techniques has no case"],
  ])("are not compared, with the reason (%#)", (one, because) => {
    expect(cardTechniques(one, 0.95)).toEqual({ estimate: null, because });
  });

  it("have nothing within grades where no grade saw both", () => {
    const apart = cardTechniques(card(["I", "closed", 5, 5], ["II", "open", 3, 5]), 0.95);
    expect(apart).toMatchObject({ within: { because: "in no grade were both techniques used" }, oneWay: ["I", "II"] });
  });
});
