// The library as a user of the package imports it: by its name, built.
import { execFileSync } from "node:child_process";
import { expect, it } from "vitest";
import { root } from "./cli/run.js";

it("is imported by name in Node", () => {
  const script =
    'import { wilson, fisherExact } from "denominator"; console.log(wilson(17, 20).interval.low, fisherExact({ first: { successes: 35, trials: 40 }, second: { successes: 7, trials: 11 } }).pointProbability);';
  const out = execFileSync(process.execPath, ["--input-type=module", "-e", script], { cwd: root, encoding: "utf8" });
  const [low, p] = out.trim().split(" ").map(Number);
  expect(low).toBeCloseTo(0.6395811, 7);
  expect(p).toBeCloseTo(0.0868, 4);
});

it("runs where no code may be made from strings", () => {
  const out = execFileSync(
    process.execPath,
    ["--disallow-code-generation-from-strings", "dist/cli.js", "proportion", "21/23", "--json"],
    { cwd: root, encoding: "utf8" },
  );
  expect(JSON.parse(out)).toMatchObject({ successes: 21, trials: 23 });
});
