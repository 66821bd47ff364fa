import { fillColumn, roomForColumns, type Columns } from "./columns.js";
import { lastColumnsReader, tailFrom, type LastColumnsReader } from "./last-columns.js";
import type { Network, Stage } from "./network.js";
import { addPath, newPathTable, pathLists, type PathList, type PathTable } from "./paths.js";

/**
 * Probability of the tables that are no likelier than the observed one, given the margins; null when the work passes
 * the limit.
 *
 * @see Mehta and Patel 1983, JASA 78:427-434 (network, longest and shortest paths)
 */
export function networkP(network: Network, workLimit: number): number | null {
  const reader = lastColumnsReader(network);
  const lastStage = network.stages.length - 1;
  if (lastStage === 0) return Math.min(1, tailFrom(reader.sorted(0), network.threshold));

  const walk: Walk = { network, workLimit, reader, columns: roomForColumns(network), p: 0, rest: 0 };
  let lists: (PathList | undefined)[] = [
    { values: Float64Array.of(0), counts: Float64Array.of(1), hashes: new Int32Array(1) },
  ];
  for (const stage of network.stages.slice(0, -1)) {
    const passed = newPathTable();
    for (let node = 0; node < lists.length; node++) {
      const list = lists[node];
      if (!list) continue;
      leaveNode(walk, stage, node, list, passed);
      lists[node] = undefined;
      if (network.work > workLimit) return null;
    }
    if (stage.column < lastStage - 1) lists = pathLists(passed, network.stages[stage.column + 1]!.count);
  }
  return Math.min(1, walk.p + walk.rest);
}

/** Passing a path on through the hash table takes as long as this many steps of the other kinds. */
const PASSING = 8;

interface Walk {
  readonly network: Network;
  readonly workLimit: number;
  readonly reader: LastColumnsReader;
  readonly columns: Columns;
  /** The sum so far and what its rounding left over (Kahan). */
  p: number;
  rest: number;
}

/** Paths at a node with their weights relative to the likeliest, and the sums of weights from each one on. */
interface Weighted extends PathList {
  readonly weights: Float64Array;
  readonly fromHere: Float64Array;
}

function leaveNode(walk: Walk, stage: Stage, node: number, list: PathList, passed: PathTable): void {
  const { network, columns } = walk;
  const next = network.stages[stage.column + 1]!;
  const isLast = stage.column === network.stages.length - 2;
  const paths = weighted(list);
  const ways = fillColumn(network, stage, node, columns);
  for (let way = 0; way < ways; way++) {
    const to = columns.node[way]!;
    const value = columns.value[way]!;
    const range = undecided(walk, next, to, value, paths, isLast);
    if (!range) continue;
    let sum = paths.fromHere[range.to]!;
    if (range.from < range.to) {
      network.work += (range.to - range.from) * (isLast ? 1 : PASSING);
      if (network.work > walk.workLimit) return;
      if (isLast) sum += finish(walk, to, value, paths, range);
      else pass(passed, to, columns.hash[way]!, value, paths, range);
    }
    if (sum > 0) add(walk, sum * Math.exp(logWeight(network, next, to) - paths.values[0]! - value));
  }
}

function weighted(list: PathList): Weighted {
  const { values, counts } = list;
  const weights = new Float64Array(values.length);
  const fromHere = new Float64Array(values.length + 1);
  for (let i = values.length - 1; i >= 0; i--) {
    weights[i] = counts[i]! * Math.exp(values[0]! - values[i]!);
    fromHere[i] = fromHere[i + 1]! + weights[i]!;
  }
  return { ...list, weights, fromHere };
}

interface Range {
  readonly from: number;
  readonly to: number;
}

/**
 * Which paths through the next node are undecided: those before the range cannot reach the threshold, those after it
 * cannot miss it. Undefined when none can reach it. Bounds are attained ones where the node is a last one.
 */
function undecided(
  { network, reader }: Walk,
  next: Stage,
  to: number,
  value: number,
  { values }: PathList,
  isLast: boolean,
): Range | undefined {
  const needed = network.threshold - value;
  const last = values.length;
  if (values[last - 1]! < needed - next.longest[to]!) return undefined;
  if (isLast && next.attained[to] === 0 && values[0]! < needed - next.shortest[to]!) {
    const { shortest, longest } = reader.bounds(to);
    next.shortest[to] = shortest;
    next.longest[to] = longest;
    next.attained[to] = 1;
    if (values[last - 1]! < needed - longest) return undefined;
  }
  const end = firstFrom(values, needed - next.shortest[to]!, last);
  return { from: end === 0 ? 0 : firstFrom(values, needed - next.longest[to]!, end), to: end };
}

/** Place of the first value not below the bound, `end` when there is none. */
function firstFrom(values: Float64Array, bound: number, end: number): number {
  if (values[0]! >= bound) return 0;
  let low = 0;
  let high = end;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (values[middle]! >= bound) high = middle;
    else low = middle + 1;
  }
  return high;
}

function finish(
  { network, reader }: Walk,
  to: number,
  value: number,
  paths: Weighted,
  { from, to: end }: Range,
): number {
  const last = reader.sorted(to);
  const needed = network.threshold - value;
  let sum = 0;
  for (let i = from; i < end; i++) sum += paths.weights[i]! * tailFrom(last, needed - paths.values[i]!);
  return sum;
}

function pass(
  passed: PathTable,
  to: number,
  hash: number,
  value: number,
  { values, counts, hashes }: PathList,
  { from, to: end }: Range,
): void {
  for (let i = from; i < end; i++) addPath(passed, to, (hashes[i]! + hash) | 0, values[i]! + value, counts[i]!);
}

/** Log of the sum over the completions of a node, of the probability of a path of value 0 to it. */
function logWeight({ rows, logs, constants }: Network, stage: Stage, node: number): number {
  let sum = constants[stage.column - 1]!;
  for (let i = 0; i < rows; i++) sum -= logs[stage.sums[node * rows + i]!]!;
  return sum;
}

function add(walk: Walk, term: number): void {
  const next = walk.p + term;
  walk.rest += Math.abs(walk.p) >= term ? walk.p - next + term : term - next + walk.p;
  walk.p = next;
}
