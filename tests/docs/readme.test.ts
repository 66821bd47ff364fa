import { readFileSync, writeFileSync } from "node:fs";
import { format } from "prettier";
import { expect, it } from "vitest";
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
