import { describe, expect, it } from "vitest";
import { movedNumbers } from "../../src/report/moved-numbers.js";
import type { Section } from "../../src/report/text.js";

const section = (answer: readonly string[], rows: readonly (readonly string[])[] = [], id = "how-often"): Section => ({
  id,
  question: `Question ${id}?`,
  answer: answer.map((text) => [text]),
  cautions: [],
  tables: [{ caption: "Success by grade, 40 cases", head: ["Grade", "Succeeded", "Share"], rows, notes: [] }],
});
const open = (text: string) => ({ text, title: "cases", cases: ["H1"] });

describe("the numbers that moved", () => {
  it("are none when nothing is printed otherwise", () => {
    const page = [section(["12 of 15 succeeded."], [["III", "12 of 15", "80%"]])];
    expect(movedNumbers(page, page)).toEqual([]);
  });
  it("are cells by row and column, with what stood there before", () => {
    const before = [
      section(
        ["All."],
        [
          ["II", "9 of 9", "100%"],
          ["III", "12 of 15", "80%"],
        ],
      ),
    ];
    const after = [
      section(
        ["All."],
        [
          ["III", "11 of 14", "79%"],
          ["II", "9 of 9", "100%"],
        ],
      ),
    ];
    const moved = { question: "Question how-often?", before: "12 of 15", after: "11 of 14" };
    expect(movedNumbers(before, after)).toEqual([
      { ...moved, line: "III, Succeeded" },
      { ...moved, line: "III, Share", before: "80%", after: "79%" },
    ]);
  });
  it("are sentences matched by their words, whatever their order; numbers that open count as words", () => {
    const before = [section(["12 of 15 succeeded.", "Loss was 3."])];
    const after = [
      { ...section([]), answer: [["Loss was 4."], [open("11 of 14"), " succeeded."]], tables: [] } satisfies Section,
    ];
    expect(movedNumbers(before, after)).toEqual([
      { question: "Question how-often?", line: "", before: "Loss was 3.", after: "Loss was 4." },
      { question: "Question how-often?", line: "", before: "12 of 15 succeeded.", after: "11 of 14 succeeded." },
    ]);
  });
  it("name what is new and what is gone: a row, a sentence, a section", () => {
    const before = [section(["One."], [["IV", "1 of 2", "50%"]])];
    const after = [section(["One.", "Two."], [["I", "3 of 3", "100%"]]), section(["Other."], [], "missing")];
    expect(movedNumbers(before, after).map(({ line, before: old, after: now }) => [line, old, now])).toEqual([
      ["", null, "Two."],
      ["I, Succeeded", null, "3 of 3"],
      ["I, Share", null, "100%"],
      ["IV, Succeeded", "1 of 2", null],
      ["IV, Share", "50%", null],
      ["", null, "Other."],
    ]);
  });
  it("keep rows of one name apart", () => {
    const before = [
      section(
        [],
        [
          ["III", "1 of 2", "50%"],
          ["III", "3 of 4", "75%"],
        ],
      ),
    ];
    const after = [
      section(
        [],
        [
          ["III", "1 of 2", "50%"],
          ["III", "4 of 4", "100%"],
        ],
      ),
    ];
    expect(movedNumbers(before, after).map(({ before: old, after: now }) => [old, now])).toEqual([
      ["3 of 4", "4 of 4"],
      ["75%", "100%"],
    ]);
  });
});
