// Writes the invented readings. Nobody in them exists: displacements and reading errors are drawn from a seeded generator.
// Run: node data-demo/make-readings.mjs
import { writeFileSync } from "node:fs";
import { mersenne } from "pure-rand/generator/mersenne";

const seed = 20260212;
const generator = mersenne(seed);
const uniform = () => ((generator.next() >>> 0) + 0.5) / 2 ** 32;
const normal = (sd) => sd * Math.sqrt(-2 * Math.log(uniform())) * Math.cos(2 * Math.PI * uniform());

/** A rater reads about the true displacement with an own bias and an own scatter. */
const read = (truth, bias, scatter) => Math.max(0, Math.round(truth + bias + normal(scatter)));

/** Sixty displacements in per cent of the shaft width, chosen to fill the grades: 12, 18, 18 and 12 of them. */
const truths = [
  [12, 1, 10],
  [18, 10, 33],
  [18, 33, 67],
  [12, 67, 105],
].flatMap(([count, low, high]) => Array.from({ length: count }, () => low + (high - low) * uniform()));
const order = truths.map((truth) => ({ truth, key: uniform() })).sort((a, b) => a.key - b.key);

const rows = order.map(({ truth }, k) => {
  const [a1, a2] = [read(truth, 0, 3), read(truth, 0, 3)];
  const [b1, b2] = [read(truth, 2, 4), read(truth, 2, 4)];
  const c = read(truth, -2, 5);
  // The second readings of B and some of C are missing, as in any study.
  return [`R${String(k + 1).padStart(2, "0")}`, a1, a2, b1, k % 12 === 5 ? "" : b2, k % 10 === 3 ? "" : c];
});
const lines = [["Radiograph", "A1", "A2", "B1", "B2", "C1"], ...rows].map((row) => row.join(","));
const folder = process.argv[2] ?? new URL(".", import.meta.url).pathname;
writeFileSync(`${folder.replace(/\/?$/, "/")}readings.csv`, `${lines.join("\n")}\n`);
