// `npm test`: installs what is missing, finds a browser, then runs every check; stops at the first that fails.
import { complain, installWhenMissing, run, say } from "../notebooks/build/installed.mjs";
import { browserForTests } from "./find-browser.mjs";

installWhenMissing();
let browser;
try {
  browser = await browserForTests(say);
} catch (error) {
  complain(error.message);
  process.exit(1);
}
say(`Browser for the page tests: ${browser}`);

const node = process.execPath;
const modules = "node_modules";
const steps = [
  { name: "types", args: [`${modules}/typescript/bin/tsc`, "-p", "."] },
  { name: "lint", args: [`${modules}/oxlint/bin/oxlint`, "--type-aware", "src", "notebooks", "tests"] },
  { name: "format", args: [`${modules}/prettier/bin/prettier.cjs`, "--check", "--log-level", "warn", "."] },
  { name: "library and command line", args: ["notebooks/build/prepare.mjs"] },
  { name: "notebooks", args: ["notebooks/build/build-pages.mjs"] },
  { name: "tests", args: [`${modules}/vitest/vitest.mjs`, "run", ...process.argv.slice(2)] },
];
for (const { name, args } of steps) {
  say(`\n== ${name}`);
  const status = run(node, args, { env: { ...process.env, BROWSER_PATH: browser, PAGES_BUILT: "1" } });
  if (status !== 0) {
    complain(`\n${name}: failed`);
    process.exit(status);
  }
}
