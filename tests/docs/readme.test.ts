import { readFileSync, writeFileSync } from "node:fs";
import { format } from "prettier";
import { expect, it } from "vitest";
import { fisherExact } from "../../src/stats/two-groups/fisher-exact.js";
import { wilson } from "../../src/stats/wilson.js";
import { documentedMethods, methodsTable } from "./methods-table.js";

const readme = new URL("../../README.md", import.meta.url);
const between = /(<!-- methods: written from the docstrings by `npm run methods` -->\n)[^]*(\n<!-- end of methods -->)/;

it("README's table of methods is the one that the docstrings give", async () => {
  const now = readFileSync(readme, "utf8");
  expect(now).toMatch(between);
  const table = await format(methodsTable(), { parser: "markdown", printWidth: 120, proseWrap: "never" });
  const wanted = now.replace(between, (_, open: string, close: string) => `${open}\n${table}${close}`);
  if (process.env["UPDATE_README"]) writeFileSync(readme, wanted);
  else expect(now).toBe(wanted);
});

it("the table names most of what is exported", () => expect(documentedMethods().length).toBeGreaterThan(50));

it("the numbers of README's example are what the functions give", () => {
  const text = readFileSync(readme, "utf8");
  const cut = (value: number): string => String(Math.trunc(value * 1000) / 1000);
  const { low, high } = wilson(42, 51).interval;
  expect(text).toContain(`low: ${cut(low)}…, high: ${cut(high)}…`);
  const { pointProbability } = fisherExact({
    first: { successes: 35, trials: 40 },
    second: { successes: 7, trials: 11 },
  });
  expect(text).toContain(`pointProbability; // ${pointProbability.toFixed(3)}`);
});

it("README names every subcommand there is", () => {
  const text = readFileSync(readme, "utf8");
  const commands = Object.keys(import.meta.glob("../../src/cli/commands/*.ts")).map((path) =>
    path.split("/").at(-1)!.replace(".ts", ""),
  );
  for (const command of commands) expect(text, command).toContain(`npx denominator ${command}`);
});
