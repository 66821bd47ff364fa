// Prints how many detectable one-digit alterations of sound sentences are found, and how many sound ones are accused.
// Run: node tests/claims/mutation.mjs [--list]
import { readFileSync } from "node:fs";
import { createServer } from "vite";

const root = new URL("../..", import.meta.url).pathname;
const server = await createServer({
  configFile: false,
  root,
  appType: "custom",
  logLevel: "error",
  server: { middlewareMode: true, watch: null, hmr: false, ws: false },
  optimizeDeps: { noDiscovery: true, include: [] },
});
const { checkText } = await server.ssrLoadModule("/src/claims/check-text.ts");
const { sound, wrong, alterations } = JSON.parse(
  readFileSync(new URL("../reference/reported-claims.json", import.meta.url), "utf8"),
);
const accused = ({ text }) =>
  checkText(text).claims.some(
    (claim) => claim.arithmetic === "fails" || claim.unit === "fails" || claim.conclusion === "fails",
  );
const show = process.argv.includes("--list");
const count = (name, items, wanted) => {
  const missed = items.filter((item) => accused(item) !== wanted);
  const share = (100 * (wanted ? items.length - missed.length : missed.length)) / items.length;
  process.stdout.write(`${name}: ${share.toFixed(2)}% of ${items.length}\n`);
  if (show) for (const { kind, slot = "", text } of missed) process.stdout.write(`  ${kind} ${slot}: ${text}\n`);
};
count("false alarms on sound sentences", sound, false);
count("planted errors found", wrong, true);
count(
  "detectable one-digit alterations found",
  alterations.filter(({ detectable }) => detectable),
  true,
);
await server.close();
