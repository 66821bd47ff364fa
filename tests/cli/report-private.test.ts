// No byte of a report, of an inspection or of an error repeats what identifies a child or a colleague. All names invented.
import { mkdtemp, readdir, readFile, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { writeXlsx } from "hucre";
import { afterAll, beforeAll, expect, test } from "vitest";
import { denominator } from "./run.js";

const people = "Zorvia Quellbach Brumaxen Tyndilow Ossvekar Kralowin Mirfenby Dretchley Vandleroo Ipplewhit".split(" ");
const births = people.map((_, i) => `${10 + i}.0${1 + (i % 9)}.200${4 + (i % 5)}`);
const codes = births.map(
  (date, i) => `${"LCQDWZKBYX"[i]}${"BQWKZ"[i % 5]}${date.replaceAll(".", "").replace("20", "")}`,
);
const numbers = people.map((_, i) => String(6_120_334 + ((i * 7919) % 104_729) * 7));
const head = [
  "Ref",
  "Who",
  "K-Nr",
  "geb",
  "Firm",
  "Side",
  "Grade",
  "Technique",
  "Success",
  "Injured on",
  "Why",
  "Notes",
];
const rows = people.map((person, i) => [
  codes[i]!,
  `${person} ${"ABC"[i % 3]}`,
  numbers[i]!,
  births[i]!,
  people[i % 3]!,
  "LR"[i % 2]!,
  ["II", "III", "3-4", "?"][i % 4]!,
  i === 4 ? `open, ${person} insisted` : "closed",
  i === 7 ? `ask ${person}` : i % 3 ? "Y" : "N",
  `2018-0${1 + (i % 9)}-1${i % 9}`,
  i % 3 ? "" : `${people[(i + 1) % 10]}'s mum refused`,
  i % 2 ? "" : `seen with ${people[(i + 4) % 10]}, born ${births[(i + 4) % 10]}, no ${numbers[(i + 4) % 10]}`,
]);
const secrets = [...people, ...births, ...codes, ...numbers].map((text) => text.toLowerCase());

let folder = "";
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), "private-"));
});
afterAll(() => rm(folder, { recursive: true, force: true }));

/** Every file below a folder, with its name, in lower case. */
async function written(of: string): Promise<string> {
  const entries = await readdir(of, { withFileTypes: true, recursive: true });
  const files = entries.filter((entry) => entry.isFile());
  const texts = await Promise.all(files.map((file) => readFile(join(file.parentPath, file.name), "latin1")));
  return [...files.map(({ name }) => name), ...texts].join("\n").toLowerCase();
}

test.each(["csv", "xlsx"])("nothing of an identifier leaves a .%s, by any way out", async (kind) => {
  const file = join(folder, `series.${kind}`);
  const cell = (text: string): string => (text.includes(",") ? `"${text}"` : text);
  await writeFile(
    file,
    kind === "csv"
      ? [head, ...rows].map((row) => row.map(cell).join(",")).join("\n")
      : await writeXlsx({
          sheets: [
            { name: "Cases", rows: [head, ...rows] },
            { name: "Vandleroo cases", rows: [["to do"], ["ask Dr Ipplewhit"]] },
          ],
        }),
  );
  const answers = join(folder, "answers.json");
  await writeFile(answers, JSON.stringify({ "Success | value | nonsense": "yes", "identifies | Firm": "perhaps" }));
  const out = join(folder, kind);
  const ran = [
    await denominator("inspect", file),
    await denominator("inspect", file, "--json"),
    await denominator("report", file, "--out", out),
    await denominator("report", file, "--answers", answers, "--out", join(folder, "refused")),
  ];
  expect(ran.map(({ status }) => status)).toEqual([0, 0, 0, 1]);
  const all = [...ran.flatMap(({ out: said, err }) => [said, err]), await written(out)].join("\n").toLowerCase();
  expect(all).toContain("10 cases");
  for (const secret of secrets) expect(all).not.toContain(secret);
});
