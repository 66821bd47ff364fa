import fc from "fast-check";
import Papa from "papaparse";
import { expect, it } from "vitest";
import { csvTable } from "../../src/report/csv-table.js";

const table = (cell: string) => ({ caption: "c", head: ["a"], rows: [[cell]], notes: [] });

it("never lets a cell start a formula, and keeps numbers numbers", () => {
  for (const cell of ["=1+1", "+cmd", "-2+3", "@x", "\t=1", "\r=1"])
    expect(csvTable(table(cell))).toContain(`'${cell}`);
  for (const cell of ["-0.12", "+5", "3", "\u22121 to 53"]) expect(csvTable(table(cell))).not.toContain("'");
});

it("keeps any text through a CSV reader", () => {
  fc.assert(
    fc.property(fc.string({ unit: "grapheme" }), (cell) => {
      const [, , row] = Papa.parse<string[]>(csvTable(table(cell)).slice(1), { delimiter: ",", newline: "\r\n" }).data;
      expect(row![0]!.replace(/^'/, "")).toBe(cell.replace(/^'/, ""));
    }),
  );
});
