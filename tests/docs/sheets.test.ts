// SHEETS.md is what a surgeon answers a sheet's questions by: its answers are taken, and it leaves no role out.
import { readFileSync } from "node:fs";
import { expect, it } from "vitest";
import { readAnswers } from "../../src/cases/read-answers.js";
import { readCases } from "../../src/cases/read-cases.js";
import { readSheet } from "../../src/cases/read-sheet.js";
import { roles } from "../../src/cases/types.js";

const document = readFileSync(new URL("../../SHEETS.md", import.meta.url), "utf8");

it("names every role", () => expect(roles.filter((role) => !document.includes(`\`${role}\``))).toEqual([]));

it("the answers that it shows answer the sheet that they speak of", async () => {
  const text = `ID,Side,Injury date,Grade,First technique,Success
H1,L,2021-04-03,II,closed,yes
H2,R,2021-05-13,3-4,closed,x
H3,L,2021-06-23,III,open,x
H4,L,2021-07-03,III,closed,no
`;
  const [, json] = /```json\n([^]*?)```/.exec(document)!;
  const sheet = await readSheet(new TextEncoder().encode(text), "shown.csv");
  const asked = readCases(sheet).questions.map(({ id }) => id);
  expect(asked).toEqual(expect.arrayContaining(["Grade | grade | 3-4", "Success | value | x"]));
  const { questions, cases } = readCases(sheet, { answers: readAnswers(json!, "answers.json") });
  expect(questions.map(({ id }) => id)).toEqual(asked.filter((id) => !id.includes(" | ")));
  const success = cases.map(({ values }) => values[5]);
  expect(success.slice(1, 3)).toMatchObject([
    { kind: "yesNo", yes: false },
    { kind: "yesNo", yes: true },
  ]);
});
