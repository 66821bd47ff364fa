// Hostile but realistic cells, S5 to S23. All content invented.
import { expect, test } from "vitest";
import { showValue } from "../../src/cases/show-value.js";
import type { CaseTable } from "../../src/cases/types.js";
import { asked, column, ofRows, ofText, question } from "./sheet-of.js";

/** One column of these cells beside a study number. */
function cells(heading: string, texts: readonly string[], answers: Record<string, string> = {}): Promise<CaseTable> {
  const quoted = (text: string): string => (/[",\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text);
  const rows = texts.map((text, i) => `H${String(i + 1).padStart(3, "0")},L,${quoted(text)}`);
  return ofText(`ID,Side,${quoted(heading)}\n${rows.join("\n")}\n`, { answers });
}

async function shown(heading: string, texts: readonly string[]): Promise<string[]> {
  return column(await cells(heading, texts), heading).map(showValue);
}

test("S5: yes and no in any spelling; ticks, marks, 1 and 0 are asked; a blank stays missing", async () => {
  const texts = ["Y", "yes", "Y ", "N", "no", "1", "0", "x", "✓", "?", ""];
  expect(await shown("Success", texts)).toEqual([
    "yes",
    "yes",
    "yes",
    "no",
    "no",
    "asked",
    "asked",
    "asked",
    "asked",
    "asked",
    "blank",
  ]);
  expect(asked(await cells("Success", texts), "Success")).toEqual(["1: 7", "0: 8", "x: 9", "✓: 10", "?: 11"]);
});

test("S5: under a heading of failure a yes is a failure, and the column says so", async () => {
  const failed = await cells("Failed", ["1", "0", "Y", "failed", "success"], { "Failed | value | 1": "yes" });
  expect(column(failed, "Failed").map(showValue)).toEqual(["yes", "asked", "yes", "yes", "no"]);
  expect(failed.columns.at(-1)).toMatchObject({ role: "success", sense: "negative" });
  expect((await cells("Success", ["Y", "N"])).columns.at(-1)).toMatchObject({ sense: "positive" });
});

test("S5: outcomes in words are asked, each once", async () => {
  const table = await cells("Outcome", ["good", "poor", "good", "success", "failed"]);
  expect(asked(table, "Outcome")).toEqual(["good: 2 4", "poor: 3"]);
});

test("S5: a column headed success is asked about, however odd its cells", async () => {
  const texts = ["Y", "LTFU", "DNA x2", "moved to Spain", "died (RTA)", "pending", "not yet"];
  expect(await shown("Success", texts)).toEqual(["yes", "lost", "asked", "asked", "asked", "asked", "asked"]);
  expect((await cells("Reason for failure", ["wire out", "", "slipped"])).columns.at(-1)!.role).toBe("other");
});

test("S6: five kinds of missing are kept apart and 999 is asked", async () => {
  const texts = ["170", "160", "165", "lost", "LTFU", "DNA", "moved", "n/a", "N/A", "-", "999", "not done", "died"];
  expect(await shown("Elev", texts)).toEqual([
    "170",
    "160",
    "165",
    "lost",
    "lost",
    "not done",
    "lost",
    "not applicable",
    "not applicable",
    "not known",
    "asked",
    "not done",
    "died",
  ]);
  const table = await cells("Elev", texts, { "Elev | code | 999": "not known" });
  expect(column(table, "Elev").filter(({ kind }) => kind === "number")).toHaveLength(3);
});

test("S7: none is not blank; blanks are asked together, several complications are split", async () => {
  const table = await cells("Complications", [
    "none",
    "nil",
    "",
    "-",
    "pin site inf; stiff",
    "0",
    "",
    "wire out + stiff",
  ]);
  expect(column(table, "Complications").map(showValue)).toEqual([
    "none",
    "none",
    "asked",
    "asked",
    "pin site inf; stiff",
    "none",
    "asked",
    "wire out; stiff",
  ]);
  expect(asked(table, "Complications")).toEqual([": 4 8", "-: 5"]);
  const answered = await cells("Complications", ["none", "", "stiff"], { "Complications | blank": "not recorded" });
  expect(column(answered, "Complications").map(showValue)).toEqual(["none", "not known", "stiff"]);
});

test("S7: a blank of a case that was lost or excluded is no doubt", async () => {
  const table = await ofText(
    "ID,Excluded because,Last review,Complications\nH1,,seen,none\nH2,,lost,\nH3,open wound,,\nH4,none,seen,\n",
  );
  expect(asked(table, "Complications")).toEqual([": 5"]);
});

test("S8: grades in Roman, Arabic and words; sub-grades apart; doubts, ranges and measurements asked", async () => {
  const texts = ["III", "3", "3b", "iii", "G3", "grade 3", "Grade IIIA", "3?", "3-4", "III/IV", "33%", "V", "11"];
  const table = await cells("Grade", texts);
  expect(column(table, "Grade").map(showValue)).toEqual([
    "III",
    "III",
    "III (b)",
    "III",
    "III",
    "III",
    "III (a)",
    "asked",
    "asked",
    "asked",
    "asked",
    "V",
    "asked",
  ]);
  expect(table.log.find(({ from }) => from === "3b")?.why).toBe("grade III, sub-grade b kept apart");
  expect(question(table, "3-4").choices).toEqual(["grade III", "grade IV", "not known"]);
  expect(await shown("Severity", ["mild", "Moderate", "severe", "mild"])).toEqual([
    "mild",
    "moderate",
    "severe",
    "mild",
  ]);
});

test("S9: dates are ordered by proof only; serial numbers and names of months are read", async () => {
  const texts = ["03/04/2021", "13/04/2021", "4/17/2021", "3 Apr 21", "2021-04-03", "44289"];
  const table = await cells("Injury date", texts);
  expect(column(table, "Injury date").map(showValue)).toEqual([
    "asked",
    "2021-04-13",
    "2021-04-17",
    "2021-04-03",
    "2021-04-03",
    "2021-04-03",
  ]);
  expect(asked(table, "Injury date")).toEqual(["03/04/2021: 2"]);
  expect(await shown("Injury date", ["03/04/2021", "13/04/2021"])).toEqual(["2021-04-03", "2021-04-13"]);
  expect(await shown("Injury date", ["03/04/2021", "04/13/2021"])).toEqual(["2021-03-04", "2021-04-13"]);
  const unproved = await cells("Injury date", ["03/04/2021", "05/06/2021"]);
  expect(asked(unproved, "Injury date")).toEqual([": 2 3"]);
  expect(
    column(
      await cells("Injury date", ["03/04/2021", "05/06/2021"], { "Injury date | order": "month first" }),
      "Injury date",
    ).map(showValue),
  ).toEqual(["2021-03-04", "2021-05-06"]);
  expect(question(await cells("Injury date", ["44289", "1/2/2031", "13/2/2031"]), "44289").choices).toEqual([
    "2021-04-03",
    "2025-04-04",
    "not known",
  ]);
});

test("S9: a workbook whose program exchanged day and month is asked about", async () => {
  const rows = [
    ["ID", "Injury date"],
    ...["2021-04-03", "2021-05-06", "2021-01-02"].map((iso, i) => [`H${i}`, new Date(iso)]),
    ["H4", "13/04/2021"],
    ["H5", "25/12/2021"],
  ];
  const table = await ofRows(rows);
  expect(column(table, "Injury date").map(showValue)).toEqual(["asked", "asked", "asked", "2021-04-13", "2021-12-25"]);
  const mended = await ofRows(rows, {}, { answers: { "Injury date | exchanged": "exchange day and month" } });
  expect(column(mended, "Injury date").map(showValue)).toEqual([
    "2021-03-04",
    "2021-06-05",
    "2021-02-01",
    "2021-04-13",
    "2021-12-25",
  ]);
});

test("S10: an impossible order names both cells, keeps the case and blocks its dates", async () => {
  const table = await ofText(
    "ID,Side,DOB,Injury date,Op date,Review date\nH1,L,2023-01-01,2022-05-10,2022-05-01,2021-11-02\nH2,R,2010-01-01,2022-05-10,2022-05-12,2022-11-02\n",
  );
  expect(table.cases).toHaveLength(2);
  expect(column(table, "Op date").map(showValue)).toEqual(["asked", "2022-05-12"]);
  expect(question(table, "2022-05-10, 2022-05-01")).toMatchObject({
    rows: [2],
    asks: "Op date (2022-05-01) lies before Injury date (2022-05-10): which is wrong?",
  });
  expect(question(table, "withheld, 2022-05-10").rows).toEqual([2]);
  expect(JSON.stringify(table)).not.toContain("2023");
});

test("S11: ages in every spelling; the doubtful are asked, a date is not repeated", async () => {
  const texts = ["8y 3m", "12+6", "13,5", "150m", "14 yrs", "13.11", "~15", "2009-07-01", "999", "8 years 3 months"];
  const table = await cells("Age", texts);
  expect(column(table, "Age").map(showValue)).toEqual([
    "8.25",
    "12.5",
    "13.5",
    "12.5",
    "14",
    "asked",
    "~15",
    "asked",
    "asked",
    "8.25",
  ]);
  expect(asked(table, "Age")).toEqual(["13.11: 7", "~15: 8", "(a date): 9", "999: 10"]);
  expect(question(table, "13.11").choices).toEqual(["13 years 11 months", "13.11 years", "not known"]);
  expect(JSON.stringify(table)).not.toContain("2009-07-01");
  expect(await shown("Age", ["12 yo", "12½", "12 y/o"])).toEqual(["12", "12.5", "12"]);
  expect(await shown("Age (months)", ["150", "162"])).toEqual(["12.5", "13.5"]);
});

test("S11: an age that does not fit the birth date is asked without showing it", async () => {
  const table = await ofText("ID,Age,DOB,Injury date\nH1,12,2009-01-01,2021-06-01\nH2,9,2009-01-01,2021-06-01\n");
  expect(asked(table, "Age")).toEqual(["9 years: 3"]);
  expect(JSON.stringify(table)).not.toContain("2009");
});

test("S12: numbers with marks; bounds kept, ranges, words and broken formulas asked", async () => {
  const texts = ["170", "160", ">170", "~45", "40-45", "150°", "165 (pain)", "full", "=B4*2", "#REF!", "190", "-20"];
  const table = await cells("Elevation", texts);
  expect(column(table, "Elevation").map(showValue)).toEqual([
    "170",
    "160",
    ">170",
    "~45",
    "asked",
    "150°",
    "asked",
    "asked",
    "asked",
    "asked",
    "asked",
    "asked",
  ]);
  expect(asked(table, "Elevation").map((each) => each.split(":")[0])).toEqual([
    "~45",
    "40-45",
    "165 (pain)",
    "full",
    "=B4*2",
    "#REF!",
    "190",
    "-20",
  ]);
  expect(question(table, "40-45").choices[0]).toBe("the midpoint, 42.5");
  const workbook = await ofRows(
    [
      ["ID", "Elevation"],
      ["H1", 170],
      ["H2", null],
      ["H3", 150],
    ],
    {
      cells: new Map([["2,1", { value: null, type: "formula", formula: "B2-10", formulaResult: 160 }]]),
    },
  );
  expect(column(workbook, "Elevation").map(showValue)).toEqual(["170", "160", "150"]);
});

test("S13 and S17: a typed grade or success that its measurement contradicts is asked, both stay in the list", async () => {
  const sheet =
    "ID,Displ,Grade,Success,Elev\nH1,20%,II,Y,170\nH2,70%,III,Y,165\nH3,80%,IV,Y,120\nH4,50%,III,N,100\nH5,10%,I,Y,172\n";
  const table = await ofText(sheet);
  expect(asked(table, "Grade")).toEqual(["III, 70%: 3"]);
  expect(asked(table, "Success")).toEqual(["yes, 120: 4"]);
  expect(column(table, "Grade").map(showValue)).toEqual(["II", "asked", "IV", "III", "I"]);
  const { id } = question(table, "III, 70%");
  const kept = await ofText(sheet, { answers: { [id]: "keep the typed grade III" } });
  expect(column(kept, "Grade").map(showValue)[1]).toBe("III");
  const cut = await ofText(sheet, { answers: { [id]: "use grade IV" } });
  expect(column(cut, "Grade").map(showValue)[1]).toBe("IV");
});

test("S16: an earlier attempt in the cell or in the notes is asked, and no name is shown", async () => {
  const table = await ofText(
    "ID,Name,Technique,Note\nH1,Ann Zorvia,open,failed closed x2 for Zorvia\nH2,Bo Quell,open (failed closed x2),\nH3,Cy Brumax,closed,failed closed\nH4,Di Tyndil,open,fine\n",
  );
  expect(asked(table, "Technique")).toEqual(["open (failed closed x2): 3", "open, failed closed x2 for [withheld]: 2"]);
  expect(column(table, "Technique").map(showValue)).toEqual(["asked", "asked", "closed", "open"]);
  const answers = { "Technique | attempt | open (failed closed x2)": "first technique closed" };
  const answered = await cells("Technique", ["open (failed closed x2)", "open"], answers);
  expect(column(answered, "Technique").map(showValue)).toEqual(["closed", "open"]);
});

test("S19: follow-up in clinic shorthand, months; the rest asked", async () => {
  const texts = ["6/12", "1 yr", "18/12", "2y", ">1", "phone only", "52/52", "discharged"];
  const table = await cells("Follow-up", texts);
  expect(column(table, "Follow-up").map(showValue)).toEqual([
    "6",
    "12",
    "18",
    "24",
    "asked",
    "asked",
    "asked",
    "asked",
  ]);
  expect(question(table, "52/52").choices[0]).toBe("52 weeks");
  const bare = await cells("Follow-up", ["12", "24"], { "Follow-up | unit": "weeks" });
  expect(column(bare, "Follow-up")[0]).toEqual({ kind: "number", number: (12 * 12) / 52 });
});

test("S20: fractions that became dates are asked, with the fraction offered", async () => {
  const table = await cells("Displ in thirds", ["1/3", "2/3", "1-Mar", "46082", "01/03/2026", "0"]);
  expect(asked(table, "Displ in thirds")).toEqual(["1-Mar: 4", "46082: 5", "01/03/2026: 6"]);
  for (const text of ["1-Mar", "46082", "01/03/2026"]) expect(question(table, text).choices[0]).toBe("1/3");
  const workbook = await ofRows([
    ["ID", "Displ"],
    ["H1", "1/3"],
    ["H2", "2/3"],
    ["H3", new Date("2026-03-02")],
  ]);
  expect(question(workbook, "2026-03-02").choices).toEqual(["2/3", "not known"]);
});

test("S22: raters are paired by what is there, copied readings are questioned", async () => {
  const rows = Array.from(
    { length: 12 },
    (_, i) => `H${i + 1},${["II", "III"][i % 2]},II,${["II", "III"][i % 2]},${i < 5 ? "III" : ""}`,
  );
  const table = await ofText(`ID,A1,B1,A2,B2\n${rows.join("\n")}\n`);
  expect(table.columns.slice(1).map(({ role }) => role)).toEqual(["rater", "rater", "rater", "rater"]);
  expect(question(table, "A1, A2")).toMatchObject({
    rows: [],
    asks: '"A1" and "A2" are equal in all 12 rows that have both: read independently, or copied?',
  });
});

test("S23: units are brought together only by arithmetic; millimetres beside percentages are asked", async () => {
  const table = await cells("Displacement", ["12 mm", "0.4", "40%", "2/3", "35%"]);
  expect(column(table, "Displacement").map(showValue)).toEqual([
    "asked",
    "40 percent",
    "40 percent",
    "66.6667 percent",
    "35 percent",
  ]);
  expect(table.log.find(({ from }) => from === "0.4")?.why).toBe(
    "shares of the whole in a column of percent, read as 40",
  );
  const fractions = await cells("Displ", ["40%", "~2/3", "1-Mar", "2/3 width"], { "Displ | converted | 1-Mar": "1/3" });
  expect(column(fractions, "Displ").map(showValue)).toEqual([
    "40 percent",
    "~66.6667 percent",
    "33.3333 percent",
    "66.6667 percent",
  ]);
  expect(await shown("Displ (mm)", ["12", "1.5 cm"])).toEqual(["12 mm", "15 mm"]);
});

test("thousands and decimals are told apart by the column, else asked", async () => {
  expect(await shown("Cost", ["1,234", "2.50", "10.75"])).toEqual(["asked", "2.5", "10.75"]);
  expect(await shown("Cost", ["1,234", "2,5", "10,75"])).toEqual(["1.234", "2.5", "10.75"]);
});

test("a technique misspelt is asked, not made a group of its own", async () => {
  const table = await cells("Technique", ["closed", "Closed ", "clsoed", "open", "open", "opne"]);
  expect(asked(table, "Technique")).toEqual(["clsoed: 4", "opne: 7"]);
});

test("S11: an age far from all others is asked about, with the slip of a sign offered", async () => {
  const ages = [11, 12, 12, 13, 13, 14, 14, 15, 1.3];
  const text = `ID,Age,Grade\n${ages.map((age, i) => `H${i + 1},${age},II`).join("\n")}\n`;
  const { asks, rows, choices } = question(await ofText(text), "1.3 years");
  expect(asks).toBe("an age of 1.3 years is far from the others (11 to 15): is it right?");
  expect([rows, choices]).toEqual([[10], ["13 years", "1.3 years", "not known"]]);
  const answered = await ofText(text, { answers: { "Age | far age | 1.3 years": "13 years" } });
  expect(column(answered, "Age").at(-1)).toEqual({ kind: "number", number: 13 });
});

test("S9: a day and month without a year is asked about, with the years of the column", async () => {
  const table = await ofText("ID,Injury date,Grade\nH1,2019-04-20,II\nH2,25/03/2020,II\nH3,3/4,III\n");
  expect(question(table, "3/4").choices.slice(0, 3)).toEqual(["2019-04-03", "2020-04-03", "not known"]);
});
