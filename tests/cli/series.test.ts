import { expect, it } from "vitest";
import { readMix } from "../../src/cli/series/read-mix.js";
import { readPublishedSeries } from "../../src/findings/series/read-published-series.js";
import { seriesText } from "../../src/cli/series/series-text.js";
import { seriesRates } from "../../src/stats/series/series-rates.js";

const bytes = (text: string): Uint8Array => new TextEncoder().encode(text);
const read = (text: string) => readPublishedSeries(bytes(text), "papers.csv");

it("reads published counts whatever the separator, the order and the case of the columns", () => {
  const expected = [
    {
      name: "A",
      grades: [
        { grade: "I", successes: 3, cases: 4 },
        { grade: "II", successes: 1, cases: null },
      ],
    },
    { name: "B", grades: [{ grade: "I", successes: 0, cases: 9 }] },
  ];
  expect(read("series,grade,successes,cases\nA,I,3,4\nA,II,1,\nB,I,0,9\n").series).toEqual(expected);
  expect(
    read("\uFEFFCases;Successes;GRADE;Series\r\n4;3; I ;A\r\n\r\n9;0;I;B\r\nnot stated;1;II;A\r\n").series,
  ).toEqual(expected);
});

it("keeps a line break and a separator inside quotation marks", () => {
  expect(read('series,grade,successes,cases\n"Clinic A,\nnorth",I,3,4\n').series[0]!.name).toBe("Clinic A,\nnorth");
});

it("names every wrong cell by file, row, column and rule", () => {
  const text = "series,grade,successes,cases\nA,I,5,4\n\n,II,-1,3.5\nA,I,1,two\n";
  expect(() => read(text)).toThrow(
    [
      'papers.csv: row 2, column "successes": must be at most the cases (4), got "5"',
      'papers.csv: row 4, column "series": must not be empty',
      'papers.csv: row 4, column "successes": must be a whole number of at least 0, or "not stated", got "-1"',
      'papers.csv: row 4, column "cases": must be a whole number of at least 0, or "not stated", got "3.5"',
      'papers.csv: row 5, column "cases": must be a whole number of at least 0, or "not stated", got "two"',
      'papers.csv: row 5, column "grade": must stand once in series "A", and row 2 has it already, got "I"',
    ].join("\n"),
  );
});

it("refuses a file without its columns or its rows", () => {
  expect(() => read("series,grade,successes\nA,I,3\n")).toThrow(
    'papers.csv: row 1, column "cases": must be in the heading',
  );
  expect(() => read("series,grade,cases,cases,successes\nA,I,3,3,3\n")).toThrow(
    'papers.csv: row 1, column "cases": must be in the heading once',
  );
  expect(() => read("series,grade,successes,cases\n")).toThrow(
    "papers.csv: must hold at least one row below the heading",
  );
  expect(() => read("  \n")).toThrow("papers.csv: holds no text");
});

it("adds up the techniques of a grade, as the counts of an own sheet are written", () => {
  const text =
    "series,grade,technique,successes,cases\nown,I,closed,9,9\nown,II,closed,14,15\nown,II,open,1,1\nown,III,open,2,\n";
  expect(read(text)).toEqual({
    series: [
      {
        name: "own",
        grades: [
          { grade: "I", successes: 9, cases: 9 },
          { grade: "II", successes: 15, cases: 16 },
          { grade: "III", successes: 2, cases: null },
        ],
      },
    ],
    remarks: [],
  });
  expect(() => read(`${text}own,II,open,1,1\n`)).toThrow(
    'papers.csv: row 6, column "grade": must stand once with technique "open" in series "own", and row 4 has it already, got "II"',
  );
});

it("says which columns it does not use", () => {
  expect(read("series,grade,successes,cases,year\nA,I,3,4,1999\n").remarks).toEqual([
    'papers.csv: column "year" is not used',
  ]);
});

it("reads a mix of grades, also grades of two words", () => {
  expect(readMix("I 10, grade two 2.5 ,III 0", ["I", "grade two", "III"])).toEqual([
    { grade: "I", weight: 10 },
    { grade: "grade two", weight: 2.5 },
    { grade: "III", weight: 0 },
  ]);
});

it.each([
  ["", 'mix: each part must be a grade and its weight, as "II 20", got ""'],
  ["I", 'mix: each part must be a grade and its weight, as "II 20", got "I"'],
  ["I 1, II -2", 'mix: each part must be a grade and its weight, as "II 20", got "II -2"'],
  ["I 1,, II 2", 'mix: each part must be a grade and its weight, as "II 20", got ""'],
  ["V 1", 'mix: a grade must be one of the file (I, II), got "V"'],
  ["I 1, I 2", 'mix: grade "I" must stand once, got it twice'],
  ["I 0, II 0", "mix: the weights must add up to more than 0"],
])('refuses the mix "%s"', (text, message) => {
  expect(() => readMix(text, ["I", "II"])).toThrow(message);
});

it("answers in sentences, with the reason where there is no rate", () => {
  const { series } = read("series,grade,successes,cases\nA,I,9,9\nA,II,6,11\nB,I,3,\n");
  const text = seriesText(seriesRates(series, { mix: [{ grade: "II", weight: 4 }] }));
  expect(text).toBe(
    [
      "2 series; intervals are 95% Wilson.",
      "Common mix of grades (as given): II 100%.",
      "Not in the mix, so not in the standardised rates: I.",
      "",
      "A: 15 of 20 (75%, 53 to 89); 55%, 28 to 79 with the common mix.",
      "  grade I: 9 of 9 (100%, 70 to 100)",
      "  grade II: 6 of 11 (55%, 28 to 79)",
      "",
      "B: cases are not stated; no rate with the common mix, because the series has no cases of grade II, which the mix holds.",
      "  grade I: cases are not stated",
      "",
      "Standardising removes a difference in grades only: what counted as success, who was left out and how long they were followed may still differ.",
    ].join("\n"),
  );
});
