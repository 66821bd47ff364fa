import { random, type Random } from "../../numeric/random.js";
import { requireLevel, requireOptions } from "../guards.js";
import { requireSimulation } from "../measurements/require-simulation.js";
import type { Interval, NotEstimable } from "../types.js";
import { bcaInterval } from "./bca-interval.js";

export interface Bootstrap {
  readonly method: "BCa bootstrap";
  /** What was drawn: single items, or whole clusters; within strata when there are any. */
  readonly unit: "item" | "cluster";
  readonly units: number;
  readonly strata: number;
  readonly level: number;
  readonly seed: number;
  readonly draws: number;
  readonly estimate: number;
  /** Bias-corrected and accelerated. */
  readonly interval: Interval;
  readonly percentile: Interval;
  /** Standard deviation over the resamples. */
  readonly standardError: number;
  readonly bias: number;
  readonly acceleration: number;
  /** Resamples in which the statistic was undefined; they are left out. */
  readonly undefinedDraws: number;
}

export interface BootstrapOptions<Item> {
  readonly seed?: number;
  readonly draws?: number;
  readonly level?: number;
  /** Label of the stratum of an item; each stratum keeps its size. */
  readonly stratum?: (item: Item) => string;
  /** Label of the cluster of an item, such as the child of a limb; clusters are drawn whole, each from one stratum. */
  readonly cluster?: (item: Item) => string;
}

/** More of the resamples undefined than this, and there is no interval. */
const mostUndefined = 0.05;

/**
 * BCa bootstrap interval of any statistic, seeded: the same on every machine and in the browser.
 *
 * @param items cases, readings, pairs: whatever the statistic takes; at least two units
 * @param statistic of items, a number or null where the items leave it undefined
 * @param options.seed default 1
 * @param options.draws resamples, 1 to 10 million; default 9999
 * @param options.level coverage in (0, 1); default 0.95
 * @param options.stratum, options.cluster labels; default none
 * @returns the interval, or null with the reason: the statistic undefined or the same in every resample, one unit, too
 *   many undefined resamples
 * @throws RangeError when seed, draws or level are out of range, or a cluster lies in two strata
 * @see Efron 1987, J Am Stat Assoc 82:171-185; Davison and Hinkley 1997, Bootstrap Methods and their Application,
 *   sections 3.2 (strata), 3.8 (clusters) and 5.3.2
 * @example bootstrap([1, 2, 3, 4], (values) => values.reduce((a, b) => a + b) / values.length, { draws: 99 }).estimate // => 2.5
 */
export function bootstrap<Item>(
  items: readonly Item[],
  statistic: (items: readonly Item[]) => number | null,
  options: BootstrapOptions<Item> = {},
): Bootstrap | NotEstimable {
  requireOptions("bootstrap", options, ["seed", "draws", "level", "stratum", "cluster"]);
  const { seed = 1, draws = 9999, level = 0.95, stratum = () => "", cluster } = options;
  requireSimulation("bootstrap", { seed, draws });
  requireLevel("bootstrap", level);
  const strata = unitsByStratum(items, stratum, cluster);
  const units = [...strata.values()].reduce((sum, group) => sum + group.length, 0);
  if (units < 2)
    return { estimate: null, because: `resampling needs at least 2 units, there ${units === 1 ? "is 1" : "are 0"}` };
  const estimate = statistic(items);
  if (!isDefined(estimate)) return { estimate: null, because: "the statistic is undefined in these data" };

  const values = resampled([...strata.values()], statistic, { stream: random(seed), draws });
  const undefinedDraws = draws - values.length;
  if (undefinedDraws > mostUndefined * draws)
    return { estimate: null, because: `the statistic was undefined in ${undefinedDraws} of ${draws} resamples` };
  const left = leftOut([...strata.values()], statistic);
  if (left === null) return { estimate: null, because: "the statistic is undefined with one unit left out" };
  const limits = bcaInterval({ estimate, values, left, level });
  if ("because" in limits) return limits;
  return {
    method: "BCa bootstrap",
    unit: cluster ? "cluster" : "item",
    units,
    strata: strata.size,
    level,
    seed,
    draws,
    estimate,
    ...limits,
    undefinedDraws,
  };
}

const isDefined = (value: number | null): value is number => value !== null && Number.isFinite(value);

/** Units (items, or clusters of items) of each stratum, in order of appearance. */
function unitsByStratum<Item>(
  items: readonly Item[],
  stratum: (item: Item) => string,
  cluster: ((item: Item) => string) | undefined,
): Map<string, Item[][]> {
  const strata = new Map<string, Item[][]>();
  const clusters = new Map<string, { readonly unit: Item[]; readonly stratum: string }>();
  for (const item of items) {
    const label = stratum(item);
    const name = cluster?.(item);
    const known = name === undefined ? undefined : clusters.get(name);
    if (known && known.stratum !== label)
      throw new RangeError(
        `bootstrap: a cluster must lie in one stratum, got "${name}" in "${known.stratum}" and "${label}"`,
      );
    if (known) {
      known.unit.push(item);
      continue;
    }
    const unit = [item];
    if (name !== undefined) clusters.set(name, { unit, stratum: label });
    const group = strata.get(label);
    if (group) group.push(unit);
    else strata.set(label, [unit]);
  }
  return strata;
}

function resampled<Item>(
  strata: readonly (readonly Item[][])[],
  statistic: (items: readonly Item[]) => number | null,
  by: { readonly stream: Random; readonly draws: number },
): Float64Array {
  const values = new Float64Array(by.draws);
  let defined = 0;
  const drawn: Item[] = [];
  for (let draw = 0; draw < by.draws; draw++) {
    drawn.length = 0;
    for (const units of strata)
      for (let at = 0; at < units.length; at++)
        for (const item of units[by.stream.below(units.length)]!) drawn.push(item);
    const value = statistic(drawn);
    if (isDefined(value)) values[defined++] = value;
  }
  return values.subarray(0, defined);
}

/** The statistic with each unit left out in turn, stratum by stratum; null when one of them is undefined. */
function leftOut<Item>(
  strata: readonly (readonly Item[][])[],
  statistic: (items: readonly Item[]) => number | null,
): number[][] | null {
  const result: number[][] = [];
  for (const units of strata) {
    const values: number[] = [];
    for (const out of units) {
      const rest = strata.flatMap((others) => others.flatMap((unit) => (unit === out ? [] : unit)));
      const value = statistic(rest);
      if (!isDefined(value)) return null;
      values.push(value);
    }
    result.push(values);
  }
  return result;
}
