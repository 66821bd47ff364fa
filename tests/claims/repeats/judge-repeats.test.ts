import { expect, it, test } from "vitest";
import { checkText } from "../../../src/claims/check-text.js";

const failing = (text: string) => checkText(text).claims.filter(({ arithmetic }) => arithmetic === "fails");
const body =
  "We followed the children until union, and their parents agreed to the use of their records in this paper.";
const twice = (abstract: string, results: string): string =>
  `Abstract\n\n${abstract}\n\nMethods\n\n${body}\n\nResults\n\n${results}`;
const held = (count: string): string => `Closed reduction succeeded in ${count} fractures.`;

test.each([
  ["a numerator", held("31 of 37"), held("32 of 37")],
  ["a denominator", held("31 of 37"), held("31 of 38")],
  ["a numerator with its percentage", "Closed reduction succeeded in 31 of 37 fractures (84%).", "Closed reduction succeeded in 32 of 37 fractures (86%)."],
  ["a grade", "Closed reduction of grade III fractures succeeded in 9 of 13 fractures.", "Closed reduction of grade III fractures succeeded in 8 of 13 fractures."],
])("finds %s printed twice differently", (_, abstract, results) => {
  expect(failing(twice(abstract, results))).toHaveLength(1);
}); // prettier-ignore

it("shows both and asks which is right", () => {
  expect(failing(twice(held("31 of 37"), held("32 of 37")))[0]).toMatchObject({
    text: "32 of 37",
    because: "The same words give 31 of 37 before and 32 of 37 here. Which number is right?",
  });
});

test.each([
  ["the same numbers", held("31 of 37"), held("31/37")],
  ["another group", held("31 of 37"), "Open reduction succeeded in 33 of 37 fractures."],
  ["another grade", "Closed reduction of grade II fractures succeeded in 9 of 13 fractures.", "Closed reduction of grade III fractures succeeded in 8 of 13 fractures."],
  ["another time", "Closed reduction held at 6 weeks in 31 of 37 fractures.", "Closed reduction held at 12 weeks in 30 of 37 fractures."],
  ["another unit", held("31 of 37"), "Closed reduction succeeded in 30 of 37 children."],
  ["both numbers other", held("31 of 37"), held("12 of 15")],
  ["no group named", "Full motion was regained in 31 of 37 fractures.", "Full motion was regained in 30 of 37 fractures."],
  ["a subgroup's paragraph", held("15 of 20"), `In the boys the arm was held longer. ${held("16 of 20")}`],
  ["a subgroup's paragraph before", `In the girls it was the same. ${held("15 of 20")}`, held("16 of 20")],
  ["somebody else's series", held("31 of 37"), `Two previous papers agree. ${held("30 of 37")}`],
  ["a subgroup's heading", held("15 of 20"), `Girls\n\n${held("16 of 20")}`],
  ["a subset", held("31 of 37"), `Excluding late cases changed little. ${held("30 of 37")}`],
  ["three groups", held("15 of 20"), `${held("16 of 20")}\n\n${held("17 of 20")}`],
])("says nothing of %s", (_, abstract, results) => {
  expect(failing(twice(abstract, results))).toEqual([]);
}); // prettier-ignore

it("says nothing of two sentences in one paragraph", () => {
  expect(failing(`${held("31 of 37")} ${held("30 of 37")}`)).toEqual([]);
});
