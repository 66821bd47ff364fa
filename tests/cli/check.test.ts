import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { Command } from "commander";
import { afterAll, afterEach, beforeAll, expect, it, vi } from "vitest";
import { command } from "../../src/cli/commands/check.js";
import { InputError } from "../../src/cli/input-error.js";

let folder = "";
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), "check-"));
});
afterAll(() => rmSync(folder, { recursive: true }));
afterEach(() => {
  vi.restoreAllMocks();
});

async function run(content: string | Uint8Array | null, ...args: string[]): Promise<string> {
  const path = join(folder, "abstract.txt");
  rmSync(path, { force: true });
  if (content !== null) writeFileSync(path, content);
  const program = new Command("denominator").exitOverride();
  command.add(program);
  let printed = "";
  vi.spyOn(process.stdout, "write").mockImplementation((text) => {
    printed += String(text);
    return true;
  });
  await program.parseAsync(["check", path, ...args], { from: "user" });
  return printed;
}

it("prints the claims with the fields of the contract", async () => {
  const { claims } = JSON.parse(await run("Union in 31 of 37 fractures (86%).", "--json")) as { claims: object[] };
  expect(claims).toHaveLength(1);
  expect(claims[0]).toMatchObject({
    text: "31 of 37 fractures (86%)",
    start: 9,
    end: 33,
    kind: "percentage",
    arithmetic: "fails",
    unit: "holds",
    conclusion: "cannot be checked",
    reproducedBy: [],
  });
});

it("prints a table for people", async () => {
  const text = await run("Union in 31 of 37 fractures (86%).");
  expect(text).toContain("1 claim read: 0 hold in their arithmetic, 1 to ask about.");
  expect(text).toContain("✗ fails");
});

it("reads Windows-1252 and UTF-16 files", async () => {
  expect(
    await run(Uint8Array.from(Buffer.from("12\u00b0 better (95% CI 2\u00b0 to 22\u00b0; p = 0.21)", "latin1"))),
  ).toContain("excludes 0");
  expect(await run(Buffer.from("\ufeffUnion in 31/37 (86%)", "utf16le"))).toContain("✗ fails");
});

it.each([
  ["a missing file", null, "abstract.txt: no such file"],
  ["an empty file", " \n", "abstract.txt: holds no text"],
  [
    "a binary file",
    Uint8Array.of(80, 75, 3, 4, 0, 0),
    "abstract.txt: is no text file (it holds zero bytes); paste the text, or save it as plain text",
  ],
])("refuses %s", async (_, content, message) => {
  await expect(run(content)).rejects.toThrow(new InputError(message));
});

it("remarks on wording only when asked", async () => {
  const text = "Wiring prevented loss of position.";
  expect(await run(text)).not.toContain("Wording");
  expect(await run(text, "--style")).toContain('Wording (no verdict):\n  "prevented": a causal verb');
});
