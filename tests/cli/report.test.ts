import { existsSync, mkdtempSync, readFileSync, readdirSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { denominator, type Ran } from "./run.js";

let folder: string;
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), "report-"));
});
afterAll(() => rmSync(folder, { recursive: true }));

const demo = ["data-demo/cohort.csv", "--plan", "data-demo/cohort-plan.json"];
const file = (name: string, content: string | Uint8Array): string => {
  writeFileSync(join(folder, name), content);
  return join(folder, name);
};
const contents = (out: string): Map<string, string> =>
  new Map(
    (
      readdirSync(out, { recursive: true, withFileTypes: true }) as {
        name: string;
        parentPath: string;
        isFile(): boolean;
      }[]
    )
      .filter((entry) => entry.isFile())
      .map((entry) => [entry.name, readFileSync(join(entry.parentPath, entry.name)).toString("base64")]),
  );

describe("report on the demo cohort", () => {
  let ran: Ran;
  let seconds: number;
  beforeAll(async () => {
    const start = performance.now();
    ran = await denominator("report", ...demo, "--out", join(folder, "one"));
    seconds = (performance.now() - start) / 1000;
  });

  it("writes findings, page, figures and tables in seconds", () => {
    expect(ran.status).toBe(0);
    expect([...contents(join(folder, "one")).keys()]).toEqual(
      expect.arrayContaining([
        "findings.json",
        "report.html",
        "success-by-grade.svg",
        "success-by-grade.png",
        "how-often.csv",
      ]),
    );
    expect(ran.out).toContain("Treatment succeeded in 42 of 51 shoulders (82%; 95% CI 70 to 90).");
    // Under 3 s on a quiet machine; tests share theirs.
    expect(seconds).toBeLessThan(15);
  });
  it("writes the same bytes again", async () => {
    await denominator("report", ...demo, "--out", join(folder, "two"));
    expect(contents(join(folder, "two"))).toEqual(contents(join(folder, "one")));
  });
  it("makes a page that asks for nothing and runs nothing", () => {
    const page = readFileSync(join(folder, "one/report.html"), "utf8");
    expect(page).toContain("default-src &#39;none&#39;".replaceAll("&#39;", "'"));
    expect(page).not.toMatch(/<script|<link|src=|https?:\/\/(?!www\.w3\.org)/);
  });
  it("says at 300 dots per inch", () => {
    const png = readFileSync(join(folder, "one/figures/success-by-grade.png"));
    const at = png.indexOf("pHYs");
    expect(png.readUInt32BE(at + 4)).toBe(11811);
  });
});

it("drafts a plan, writes it and says what it took for granted", async () => {
  const { status, err } = await denominator("report", "data-demo/cohort-as-kept.csv", "--out", join(folder, "kept"));
  expect(status).toBe(0);
  expect(err).toContain('taken for granted: success (position) means that "Review: OK?" is recorded as yes');
  const plan = join(folder, "kept/plan-drafted.json");
  const again = await denominator(
    "report",
    "data-demo/cohort-as-kept.csv",
    "--plan",
    plan,
    "--out",
    join(folder, "again"),
    "--json",
  );
  const { findings } = JSON.parse(again.out) as {
    findings: { howOften: { overall: { count: { successes: number; trials: number } } } };
  };
  expect(findings.howOften.overall.count).toMatchObject({ successes: 42, trials: 51 });
});

it("shows no name of the sheet anywhere in what it writes", async () => {
  const { out, err } = await denominator("report", "data-demo/cohort-as-kept.csv", "--out", join(folder, "names"));
  const all = [
    out,
    err,
    ...[...contents(join(folder, "names")).values()].map((text) => Buffer.from(text, "base64").toString("utf8")),
  ].join("\n");
  for (const name of ["Bruno", "Fabel", "Madeup", "Notreal"]) expect(all).not.toContain(name);
});

it("counts for sharing, and as one statement", async () => {
  const counts = await denominator("counts", ...demo, "--name", "ours");
  expect(counts.out.split("\r\n").slice(0, 3)).toEqual([
    "series,grade,technique,successes,cases",
    "ours,I,closed,9,9",
    "ours,II,closed,14,15",
  ]);
  const sql = await denominator("counts", "--sql", "--plan", "data-demo/cohort-plan.json", "--table", "registry");
  expect(sql.out).toContain('FROM "registry"');
});

describe("wrong input ends with 1, a message, and nothing written", () => {
  const sheet = "ID,Grade,Success\n1,I,yes\n2,II,no\n";
  it.each<[string, () => string[], RegExp]>([
    ["no such file", () => ["none.csv"], /^none\.csv: no such file\n$/],
    [
      "a picture",
      () => [file("scan.png", Uint8Array.from([0x89, 0x50, 0x4e, 0x47, 13, 10, 26, 10, 0, 0, 0, 13]))],
      /scan\.png: /,
    ],
    ["an empty file", () => [file("empty.csv", "")], /empty\.csv: /],
    ["a heading only", () => [file("heading.csv", "ID,Grade,Success\n")], /heading\.csv: /],
    [
      "no grade",
      () => [file("gradeless.csv", "ID,Side,Success\n1,L,yes\n2,R,no\n")],
      /^gradeless\.csv: no column holds a grade/,
    ],
    [
      "a plan that is no JSON",
      () => [file("s.csv", sheet), "--plan", file("plan.json", "{")],
      /plan\.json: is not JSON/,
    ],
    [
      "a plan naming an absent column",
      () => [
        file("s.csv", sheet),
        "--plan",
        file(
          "absent.json",
          JSON.stringify({
            title: "t",
            success: [{ kind: "position", says: "s", rule: { column: "Union", "=": true } }],
            primary: "position",
          }),
        ),
      ],
      /absent\.json: success\[0\]: s\.csv has no column "Union" \(its columns: ID, Grade, Success\)/,
    ],
    ["a level of 95", () => [file("s.csv", sheet), "--level", "95"], /--level: must lie between 0 and 1, got 95/],
    [
      "a kind of success that is none",
      () => [file("s.csv", sheet), "--success", "good"],
      /--success: must be one of technical, position, motion, got good/,
    ],
  ])("%s", async (_, args, message) => {
    const out = join(folder, "nothing");
    const ran = await denominator("report", ...args(), "--out", out);
    expect(ran.err).toMatch(message);
    expect(ran.status).toBe(1);
    expect(ran.out).toBe("");
    expect(existsSync(out)).toBe(false);
  });
  it("a folder that cannot be written", async () => {
    const blocked = file("blocked", "a file, not a folder");
    const ran = await denominator("report", ...demo, "--out", join(blocked, "out"));
    expect(ran.status).toBe(1);
    expect(ran.err).toMatch(/^--out .*cannot be written/m);
  });
});

it("a wrong call ends with 2", async () => {
  expect((await denominator("report", "data-demo/cohort.csv")).status).toBe(2);
  expect((await denominator("no-such-command")).status).toBe(2);
  expect((await denominator("report", "--help")).status).toBe(0);
});

describe("a new version of the sheet", () => {
  const before = "ID,Grade,First technique,Success\nH1,II,closed,yes\nH2,III,closed,x\nH3,III,open,no\n";
  const after = "ID,Grade,First technique,Success\nH1,II,closed,yes\nH2,III,closed,x\nH4,III,open,yes\n";
  it("keeps the answers and says what changed and which printed numbers moved", async () => {
    const out = join(folder, "versions");
    const answers = file("given.json", '{"Success | value | x": "yes"}');
    const sheets = [file("v2.csv", after), "--before", file("v1.csv", before)];
    const { status, err } = await denominator("report", ...sheets, "--answers", answers, "--out", out);
    expect(status).toBe(0);
    expect(err).toContain("Cases added\n  H4 (row 4)\nCases removed\n  H3 (row 4)\nPrinted numbers that moved\n");
    expect(err).toMatch(/How often did it work\? III, Succeeded: 1 of 2 -> 2 of 2\n/);
    const changes = JSON.parse(readFileSync(join(out, "changes.json"), "utf8"));
    expect(changes).toMatchObject({ before: "v1.csv", after: "v2.csv", added: [{ id: "H4", row: 4 }], changed: [] });
    expect(changes.moved.length).toBeGreaterThan(0);
  });
  it("refuses a sheet of other cases", async () => {
    const sheets = [file("v2.csv", after), "--before", file("other.csv", before.replaceAll("H", "Z"))];
    const { status, err } = await denominator("report", ...sheets, "--out", join(folder, "refused"));
    expect([status, err]).toEqual([1, expect.stringContaining("--before: no case of other.csv is in v2.csv")]);
    expect(existsSync(join(folder, "refused"))).toBe(false);
  });
  it("compares what it can where the plan names a column that the earlier version lacks", async () => {
    const success = [{ kind: "position", says: "united", rule: { column: "Success", "=": true } }];
    const subgroups = [{ name: "tall", rule: { column: "Height", "≥": 150 } }];
    const grade = { column: "Severity", order: ["II", "III"] };
    const plan = (parts: object): string =>
      JSON.stringify({ title: "t", grade, success, primary: "position", ...parts });
    const newer =
      "ID,Severity,First technique,Success,Height\nH1,II,closed,yes,150\nH2,III,closed,no,160\nH3,III,open,no,140\n";
    const sheets = [file("v2.csv", newer), "--before", file("v1.csv", before)];
    const renamed = await denominator(
      "report",
      ...sheets,
      "--plan",
      file("p.json", plan({})),
      "--out",
      join(folder, "v-p"),
    );
    expect([renamed.status, renamed.err]).toEqual([
      0,
      expect.stringContaining("Columns renamed\n  Grade -> Severity\n"),
    ]);
    expect(renamed.err).toContain("Printed numbers that moved\n");
    const lacking = [...sheets, "--plan", file("q.json", plan({ subgroups })), "--out", join(folder, "v-q")];
    const { status, err } = await denominator("report", ...lacking);
    expect(status).toBe(0);
    expect(err).toContain("Numbers not compared: the plan does not fit the earlier version\n  q.json: subgroups[0]:");
  });
});
