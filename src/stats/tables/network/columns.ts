import { waysToFill } from "./estimate.js";
import { nodeWithKey } from "./nodes.js";
import type { Network, Stage } from "./network.js";

/** The ways to fill one column from a node: the node each leads to, the value it adds, and its hash. */
export interface Columns {
  readonly node: Int32Array;
  readonly value: Float64Array;
  readonly hash: Int32Array;
}

/** Room for the ways to fill any column of the network: no node has more than the full rows have. */
export function roomForColumns(network: Network): Columns {
  const full = network.stages[0]!.sums.subarray(0, network.rows);
  const most = Math.max(...network.columns.slice(0, -1).map((column) => waysToFill(full, column)));
  return { node: new Int32Array(most), value: new Float64Array(most), hash: new Int32Array(most) };
}

/** Fills `out` with every way to fill the stage's column from a node, and returns how many there are. */
export function fillColumn(network: Network, stage: Stage, node: number, out: Columns): number {
  const { rows, places, logs, hashes, stages } = network;
  const next = stages[stage.column + 1]!;
  const index = next.index;
  const left = stage.sums.subarray(node * rows, (node + 1) * rows);
  const below = new Int32Array(rows + 1);
  let key = 0;
  for (let i = rows - 1; i >= 0; i--) {
    below[i] = below[i + 1]! + left[i]!;
    key += left[i]! * places[i]!;
  }
  let count = 0;
  const fill = (row: number, rest: number, value: number, hash: number, rowKey: number): void => {
    const sum = left[row]!;
    const most = sum < rest ? sum : rest;
    const place = places[row]!;
    let taken = rest - below[row + 1]!;
    if (taken < 0) taken = 0;
    if (row < rows - 2) {
      for (; taken <= most; taken++)
        fill(row + 1, rest - taken, value + logs[taken]!, (hash + hashes[taken]!) | 0, rowKey - taken * place);
      return;
    }
    // The last two rows: one taken count sets the other.
    for (let at = rowKey - taken * place; taken <= most; taken++, at -= place) {
      let to = index[at]!;
      if (to < 0) to = nodeWithKey(network, next, at);
      out.node[count] = to;
      out.value[count] = value + (logs[taken]! + logs[rest - taken]!);
      out.hash[count] = (hash + hashes[taken]! + hashes[rest - taken]!) | 0;
      count++;
    }
  };
  fill(0, network.columns[stage.column]!, 0, 0, key);
  network.work += count;
  return count;
}
