import { expect, it } from "vitest";
import { denominator } from "./run.js";

const json = async (...args: string[]): Promise<Record<string, unknown>> => {
  const { out, err, status } = await denominator("size", ...args, "--json");
  expect([status, err]).toEqual([0, ""]);
  return JSON.parse(out) as Record<string, unknown>;
};

it("plans cases for a rate, and cases without a failure", async () => {
  // Sums in Python: 0.20183 for 46 cases, 0.19976 for 47.
  expect(await json("rate", "0.85", "--width", "0.2")).toMatchObject({ expected: 0.85, width: 0.2, cases: 47 });
  // 0.95^59 = 0.0485 and 0.95^58 = 0.0510.
  expect(await json("free", "0.05")).toMatchObject({ successes: 59 });
  expect((await denominator("size", "free", "0.05")).out).toBe(
    "59 cases in a row without a failure exclude a failure rate above 5% (one-sided 95%, exact).\n",
  );
});

it("plans radiographs for agreement, and tries the plan on simulated studies", async () => {
  // Bonett 2002, two observers, 0.8, width 0.2, with his correction.
  expect(await json("icc", "0.8", "--raters", "2")).toMatchObject({ images: 55 });
  // Two grades, kappa 0: variance 1/n, so (2 x 1.96 / 0.4)^2 = 96.04.
  expect(await json("kappa", "0", "--shares", "1 1", "--width", "0.4")).toMatchObject({ images: 97 });
  const tried = await json("kappa", "0.6", "--raters", "3", "--shares", "9 16 15 11", "--simulate");
  expect(tried).toHaveProperty("simulated.meanWidth");
  const { meanWidth } = tried["simulated"] as { meanWidth: number };
  expect(Math.abs(meanWidth - 0.2)).toBeLessThan(0.02);
});

it.each<[string[], number, RegExp]>([
  [["rate", "1.5"], 1, /casesForWidth: the expected rate must lie in \[0, 1\], got 1\.5/],
  [["rate", "most"], 1, /size: the value must be a number, got "most"/],
  [["kappa", "1"], 1, /kappa must be at least 0 and below 1, got 1/],
  [["kappa", "0.6", "--raters", "1"], 1, /raters must be an integer from 2 to 8, got 1/],
  [["power", "0.8"], 2, /It must be one of rate, free, kappa, icc/],
  [["rate", "0.8", "--width", "2"], 2, /fraction between 0 and 1/],
  [["kappa", "0.6", "--shares", "1 x"], 2, /two or more numbers above 0/],
])("says what is wrong with %j", async (args, status, message) => {
  const ran = await denominator("size", ...args);
  expect(ran.status).toBe(status);
  expect(ran.err).toMatch(message);
});
