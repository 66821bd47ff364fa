// @vitest-environment jsdom
import { expect, it } from "vitest";
import { tableHtml, tableText } from "../../src/notebook/copy.js";
import type { TextTable } from "../../src/report/text.js";

const table: TextTable = {
  caption: 'Success by "grade" & <b>more</b>',
  head: ["Grade", "Succeeded"],
  rows: [
    ["I", { text: "9 of 9", title: "Grade I", cases: ["a"] }],
    ["=HYPERLINK(1)", "−1\tto\n2"],
  ],
  notes: ["<script>alert(1)</script>"],
};

it("gives a spreadsheet cells that start no formula and hold no separator", () => {
  expect(tableText(table)).toBe("Grade\tSucceeded\nI\t9 of 9\n'=HYPERLINK(1)\t−1 to 2");
});

it("gives a word processor the words, nothing that runs and no inline style", () => {
  const page = new DOMParser().parseFromString(tableHtml(table), "text/html");
  expect(page.querySelector("caption")!.textContent).toBe(table.caption);
  expect([...page.querySelectorAll("th, td")].map((cell) => cell.textContent)).toEqual([
    "Grade",
    "Succeeded",
    "I",
    "9 of 9",
    "=HYPERLINK(1)",
    "−1\tto\n2",
  ]);
  expect(page.querySelector("script, b, [style]")).toBeNull();
  expect(page.querySelector("p")!.textContent).toBe("<script>alert(1)</script>");
});
