import { expect, it, test } from "vitest";
import {
  counted,
  decimalText,
  levelText,
  listText,
  percentRangeText,
  percentText,
  pText,
  ratioRangeText,
  ratioText,
} from "../../src/report/number-text.js";

it("writes a true minus sign and no negative zero", () => {
  expect(decimalText(-1.26, 1)).toBe("\u22121.3");
  expect(decimalText(-0.04, 1)).toBe("0.0");
});

it("gives percentages no digit that so few cases cannot carry", () => {
  expect(percentText(52 / 64, 64)).toBe("81%");
  expect(percentText(521 / 640, 640)).toBe("81.4%");
  expect(percentRangeText({ low: 0.7, high: 0.886 }, 64)).toBe("70 to 89");
});

// Half up at exact ties of decimal fractions, as a hand calculation does: 0.125 of 40 cases is 12.5, printed 13.
it("rounds exact halves of a count away from zero", () => {
  expect(percentText(5 / 40, 40)).toBe("13%");
  expect(percentText(1 / 8, 8)).toBe("13%");
});

test.each([
  [0.087, "p = 0.087"],
  [0.0032, "p = 0.003"],
  [0.0999, "p = 0.10"],
  [0.46, "p = 0.46"],
  [0.0009, "p < 0.001"],
  [1, "p > 0.99"],
])("p of %s is %s", (p, text) => expect(pText(p)).toBe(text));

test.each([
  [1.36, "1.4"],
  [0.1634, "0.16"],
  [24.47, "24"],
  [112.3, "112"],
  [0, "0"],
  [Infinity, "infinity"],
])("ratio %s is %s", (ratio, text) => expect(ratioText(ratio)).toBe(text));

it("says in words that a ratio has no upper limit", () =>
  expect(ratioRangeText({ low: 1.2, high: Infinity })).toBe("1.2 to no upper limit"));
it("names levels", () => expect([0.95, 0.5, 0.975].map(levelText)).toEqual(["95%", "50%", "97.5%"]));
it("counts and lists in words", () => {
  expect([counted(1, "child", "children"), counted(2, "limb")]).toEqual(["1 child", "2 limbs"]);
  expect([listText([]), listText(["I"]), listText(["I", "II", "III"])]).toEqual(["", "I", "I, II and III"]);
});
