// The invented cohort has the counts of a worked demonstration whose figures were computed in R 4.2.2, outside this project.
import { beforeAll, describe, expect, it } from "vitest";
import type { Comparison, Findings } from "../../src/findings/types.js";
import { sections } from "../../src/report/sections.js";
import { plainText } from "../../src/report/text.js";
import { demoFindings } from "../demo.js";

let found: Findings;
let words: Record<string, string>;
beforeAll(async () => {
  found = await demoFindings();
  words = Object.fromEntries(
    sections(found).map(({ id, answer, cautions }) => [id, [...answer, ...cautions].map(plainText).join("\n")]),
  );
});
const counts = (id: string): string[] =>
  found.who.ladder
    .find(({ name }) => name === id)!
    .leavers.map(({ reason, cases, children }) => `${reason} ${cases.length}/${children.length}`);

it("asks nothing of a clean sheet", () => expect(found.openQuestions).toBe(0));

describe("who is in it", () => {
  it("goes from 64 limbs of 61 children to 51 of 48", () => {
    expect(found.who.ladder.map(({ name, cases, children }) => [name, cases.length, children.length])).toEqual([
      ["screened", 64, 61],
      ["eligible", 55, 52],
      ["followed", 51, 48],
      ["analysed", 51, 48],
    ]);
    expect(counts("eligible").toSorted()).toEqual([
      "no injury radiograph 2/2",
      "open wound 3/3",
      "pathological fracture 4/4",
    ]);
    expect(counts("followed")).toEqual(["lost to follow-up 4/4"]);
    expect(found.who.bilateralChildren).toHaveLength(3);
  });
});

describe("how often it worked", () => {
  it("is 42 of 51, by grade 9/9, 15/16, 12/15, 6/11, as printed", () => {
    expect(words["how-often"]).toContain("42 of 51 shoulders (82%; 95% CI 70 to 90)");
    expect(words["how-often"]).toContain(
      "fell from 9 of 9 in grade I to 6 of 11 in grade IV (exact test for trend, p = 0.003",
    );
    expect(words["how-often"]).toContain(
      "9 of 9 is not a guarantee: the interval still allows a success rate as low as 70%.",
    );
    const rows = sections(found)
      .find(({ id }) => id === "how-often")!
      .tables[0]!.rows.map((row) => row.map((cell) => (typeof cell === "string" ? cell : cell.text)).slice(0, 4));
    expect(rows).toEqual([
      ["I", "9 of 9", "100%", "70 to 100"],
      ["II", "15 of 16", "94%", "72 to 99"],
      ["III", "12 of 15", "80%", "55 to 93"],
      ["IV", "6 of 11", "55%", "28 to 79"],
      ["All", "42 of 51", "82%", "70 to 90"],
    ]);
  });
  it("gives the trend by each convention: 0.0032, doubled 0.0049, large sample 0.0036", () => {
    const { trend } = found.howOften;
    if ("estimate" in trend) throw new Error(trend.because);
    expect(trend.exact!.pointProbability).toBeCloseTo(0.0032, 4);
    expect(trend.exact!.doubled).toBeCloseTo(0.0049, 4);
    expect(trend.asymptotic.p).toBeCloseTo(0.0036, 4);
  });
});

describe("treatment or grade", () => {
  it("finds the crude gap and that most of it was grade", () => {
    expect(words["treatment"]).toContain(
      "35 of 40 tried closed first and in 7 of 11 treated open first: a difference of 24 percentage points (95% CI \u22121 to 53; Fisher exact p = 0.087",
    );
    expect(words["treatment"]).toContain("10 of 11 were grade III or IV; of those tried closed first, 16 of 40");
    expect(words["treatment"]).toContain(
      "common odds ratio of success, closed against open, is 1.4 (exact 95% CI 0.16 to 9.7; p > 0.99); the Mantel-Haenszel difference is 6 points (\u221230 to 43)",
    );
    expect(words["treatment"]).toContain("Grade I was treated one way only and takes no part");
  });
  it("shows that grade III favours closed and grade IV open", () => {
    const { grades, mantelHaenszel, crude } = found.comparison as Comparison;
    expect(
      grades.map(
        ({ closed, open }) =>
          `${closed.count.successes}/${closed.count.trials} v ${open.count.successes}/${open.count.trials}`,
      ),
    ).toEqual(["9/9 v 0/0", "14/15 v 1/1", "10/11 v 2/4", "2/5 v 4/6"]);
    expect("oddsRatio" in mantelHaenszel && mantelHaenszel.oddsRatio).toBeCloseTo(1.3, 1);
    expect("sample" in crude.oddsRatio && crude.oddsRatio.sample).toBeCloseTo(4.0, 1);
  });
});

it("counts the conversions", () =>
  expect(words["ladder"]).toMatch(/^3 of 43 shoulders tried closed first ended otherwise: 2 assisted and 1 open/));
it("prints the limit of what was never seen", () =>
  expect(words["wrong"]).toContain("No nerve injury was seen (0 of 51; 95% CI 0 to 7%"));
it("counts the missing both ways", () =>
  expect(words["missing"]).toContain(
    "4 shoulders are missing. Had all failed, success would be 42 of 55 (76%; 95% CI 64 to 86); had all succeeded, 46 of 55 (84%; 95% CI 72 to 91).",
  ));
it("allows for full dependence of a child's limbs: 69 to 91", () =>
  expect(words["limbs"]).toContain(
    "Allowing for full dependence within a child the interval for all shoulders is 69 to 91.",
  ));
it("lists nine failures", () => expect(found.wentWrong.failures).toHaveLength(9));

it("follows the level and the kind of success", async () => {
  const wider = await demoFindings({ level: 0.99 });
  expect(wider.howOften.overall.wilson!.low).toBeLessThan(found.howOften.overall.wilson!.low);
  const technical = await demoFindings({ success: "technical" });
  expect(technical.success.kind).toBe("technical");
  expect(technical.howOften.overall.count.trials).toBe(55);
  await expect(demoFindings({ success: "position", level: 1.2 })).rejects.toThrow(RangeError);
});

it("holds no NaN and survives a journey through JSON", () => {
  expect(
    JSON.parse(JSON.stringify(found, (_, value: unknown) => (value === Infinity ? "Infinity" : value))),
  ).toBeTruthy();
  const walk = (value: unknown): void => {
    if (typeof value === "number") expect(value).not.toBeNaN();
    else if (value && typeof value === "object") Object.values(value).forEach(walk);
  };
  walk(found);
});
