import { mkdtemp, readFile, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { Command } from "commander";
import { afterEach, expect, it, vi } from "vitest";
import { readSheet } from "../../src/cases/read-sheet.js";
import { command as inspect } from "../../src/cli/commands/inspect.js";
import { command as template } from "../../src/cli/commands/template.js";

afterEach(() => {
  vi.restoreAllMocks();
});

async function run(...args: string[]): Promise<string> {
  const program = new Command("denominator").exitOverride();
  inspect.add(program);
  template.add(program);
  let printed = "";
  vi.spyOn(process.stdout, "write").mockImplementation((text) => {
    printed += String(text);
    return true;
  });
  try {
    await program.parseAsync(args, { from: "user" });
  } finally {
    vi.restoreAllMocks();
  }
  return printed;
}

const fourteen = "tests/cases/sheets/fourteen-lines.csv";

it("prints the fields of the contract as one object", async () => {
  const printed = JSON.parse(await run("inspect", fourteen, "--json")) as Record<string, unknown>;
  expect(printed).toMatchObject({
    header: { rows: [2, 3] },
    cases: 9,
    setAside: [
      { row: 1 },
      { row: 13, text: "Total | 9 | 6", why: "total or average, not a case" },
      { row: 14, text: "* red = lost" },
    ],
    identifiers: ["Name"],
    // 132 cells by hand: 30 above the cases, 11 below, 9 names, 1 field too many; 17 asked one by one, 2 as a grade or success against its rule, 2 outcomes of a case that may stand twice.
    cells: { understood: 60, asked: 21, setAside: 51 },
  });
  for (const question of printed["questions"] as Record<string, unknown>[])
    expect(question).toMatchObject({
      rows: expect.any(Array),
      column: expect.any(String),
      text: expect.any(String),
      choices: expect.any(Array),
    });
});

it("prints a page to read: counts, columns, lines set aside, questions with rows and choices", async () => {
  const page = await run("inspect", fourteen);
  expect(page).toContain("fourteen-lines.csv: 9 cases, 21 questions, 3 lines set aside\nHeading in rows 2 and 3.");
  expect(page).toMatch(/ {2}Name +identifier +withheld\n/);
  expect(page).toContain(
    'Injury: Grade: "3-4" names two grades: which one?\n     row 10; choices: grade III / grade IV / not known',
  );
});

it("applies a file of answers", async () => {
  const folder = await mkdtemp(join(tmpdir(), "answers-"));
  const file = join(folder, "answers.json");
  await writeFile(file, JSON.stringify({ "Injury: Grade | grade | 3-4": "grade IV", "Side | both | B": "two limbs" }));
  const printed = JSON.parse(await run("inspect", fourteen, "--answers", file, "--json")) as {
    cases: number;
    questions: { id: string }[];
  };
  expect(printed.cases).toBe(10);
  expect(printed.questions).toHaveLength(19);
  expect(printed.questions.map(({ id }) => id)).not.toContain("Injury: Grade | grade | 3-4");
});

it("names an absent file, and a sheet that a text file has not", async () => {
  await expect(run("inspect", "absent.csv")).rejects.toThrow("absent.csv: no such file");
  await expect(run("inspect", fourteen, "--sheet", "Old")).rejects.toThrow("sheet can only be named for a workbook");
});

it("writes the template once and replaces nothing", async () => {
  const folder = await mkdtemp(join(tmpdir(), "template-"));
  const out = join(folder, "next.xlsx");
  expect(await run("template", "--out", out)).toBe(`Wrote ${out}: one row a limb, entries checked while typing.\n`);
  const sheet = await readSheet(await readFile(out), out);
  expect(sheet.rows[0]!.cells.slice(0, 3).map(({ text }) => text)).toEqual(["ID", "Child", "Side"]);
  await expect(run("template", "--out", out)).rejects.toThrow(
    "next.xlsx: exists already and is not replaced; choose another name",
  );
  await expect(run("template", "--out", join(folder, "next.csv"))).rejects.toThrow("its name must end in .xlsx");
});

it("keeps to the contract's words for columns of staff: names are an identifier, codes and ranks are something else", async () => {
  const sheet = join(await mkdtemp(join(tmpdir(), "staff-")), "staff.csv");
  await writeFile(
    sheet,
    "ID,Side,Grade,First technique,Success,Surgeon,Operator grade,Operator\n" +
      "H1,L,II,closed,yes,Mr Quendel,consultant,A\nH2,R,III,open,no,Ms Brackwater,registrar,B\n",
  );
  const text = await run("inspect", sheet, "--json");
  const { columns, identifiers } = JSON.parse(text) as {
    columns: { name: string; role: string }[];
    identifiers: string[];
  };
  expect(columns.slice(5).map(({ role }) => role)).toEqual(["identifier", "other", "other"]);
  expect(identifiers).toEqual(["Surgeon"]);
  expect(text).not.toMatch(/quendel|brackwater/i);
});
