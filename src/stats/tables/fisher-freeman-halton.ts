import { clopperPearson } from "../clopper-pearson.js";
import { requireOptions } from "../guards.js";
import type { Interval } from "../types.js";
import { requireContingency, withoutEmpty, type Contingency } from "./contingency.js";
import { estimateWork } from "./network/estimate.js";
import { layNetwork } from "./network/network.js";
import { networkP } from "./network/network-p.js";
import { countExtremeTables } from "./random-tables.js";

interface FreemanHalton {
  readonly table: Contingency;
}

export interface ExactFreemanHaltonResult extends FreemanHalton {
  readonly method: "exact Fisher-Freeman-Halton (network)";
  /** Two-sided: the tables that are no likelier than the observed one (relative tolerance 1e-7). */
  readonly p: number;
}

export interface SimulatedFreemanHaltonResult extends FreemanHalton {
  readonly method: "Monte Carlo Fisher-Freeman-Halton";
  /** One more than the random tables that are no likelier, over one more than all of them: never 0, never too small. */
  readonly p: number;
  /** Where the exact p lies, by the exact binomial interval of the random tables. */
  readonly interval: Interval;
  readonly level: 0.99;
  readonly simulated: number;
  readonly seed: number;
}

export interface NoFreemanHalton extends FreemanHalton {
  readonly method: "Fisher-Freeman-Halton";
  readonly p: null;
  readonly because: string;
}

export interface FreemanHaltonOptions {
  /** Most steps of the exact computation before random tables take over; default 10,000,000, about half a second. */
  readonly workLimit?: number;
  /**
   * Random tables to draw when the exact computation is too large; default 100,000, or as many as have ten million cells
   * together, but 1,000 at least: about a second.
   */
  readonly simulated?: number;
  /** Seed of the random tables; default 1. */
  readonly seed?: number;
}

const MOST_CASES = 1e6;

/**
 * Fisher-Freeman-Halton test of a table of any size: exact as long as it is quick, otherwise by seeded random tables
 * with their own interval; `method` says which.
 *
 * @param table counts by row and column; empty rows and columns do not matter
 * @throws RangeError when the table is ragged, empty or holds anything but counts, or an option is out of range
 * @see Freeman and Halton 1951, Biometrika 38:141-149; Mehta and Patel 1983, JASA 78:427-434; Patefield 1981, Appl Stat
 *   30:91-97 (random tables); Phipson and Smyth 2010, Stat Appl Genet Mol Biol 9:39 (p of random tables)
 * @example fisherFreemanHalton([[1, 3, 10, 6], [2, 3, 10, 7], [1, 6, 14, 12], [0, 1, 9, 11]]).p // => 0.782684938966
 */
export function fisherFreemanHalton(
  table: Contingency,
  options: FreemanHaltonOptions = {},
): ExactFreemanHaltonResult | SimulatedFreemanHaltonResult | NoFreemanHalton {
  requireOptions("fisherFreemanHalton", options, ["workLimit", "simulated", "seed"]);
  const { workLimit = 1e7, simulated, seed = 1 } = options;
  requireContingency("fisherFreemanHalton", table);
  if (!(workLimit >= 0)) throw new RangeError(`fisherFreemanHalton: workLimit must be at least 0, got ${workLimit}`);
  if (!(simulated === undefined || (Number.isSafeInteger(simulated) && simulated >= 1)))
    throw new RangeError(`fisherFreemanHalton: simulated must be an integer of at least 1, got ${simulated}`);
  if (!(Number.isInteger(seed) && seed >= 0 && seed < 2 ** 32))
    throw new RangeError(`fisherFreemanHalton: seed must be an integer from 0 to 2^32 - 1, got ${seed}`);

  const used = withoutEmpty(table);
  if (used.length < 2 || used[0]!.length < 2) return { method: "exact Fisher-Freeman-Halton (network)", table, p: 1 };
  if (used.flat().reduce((sum, count) => sum + count, 0) > MOST_CASES)
    return {
      method: "Fisher-Freeman-Halton",
      table,
      p: null,
      because: "the table holds more than a million cases; use the chi-square test",
    };
  const p = estimateWork(used) > workLimit ? null : networkP(layNetwork(used), workLimit);
  if (p !== null) return { method: "exact Fisher-Freeman-Halton (network)", table, p };
  return { table, ...simulate(used, simulated ?? affordable(used.length * used[0]!.length), seed) };
}

function affordable(cells: number): number {
  return Math.max(1000, Math.min(100_000, Math.floor(1e7 / cells)));
}

function simulate(table: Contingency, simulated: number, seed: number): Omit<SimulatedFreemanHaltonResult, "table"> {
  const extreme = countExtremeTables(table, simulated, seed);
  return {
    method: "Monte Carlo Fisher-Freeman-Halton",
    p: (extreme + 1) / (simulated + 1),
    interval: clopperPearson(extreme, simulated, { level: 0.99 }).interval,
    level: 0.99,
    simulated,
    seed,
  };
}
