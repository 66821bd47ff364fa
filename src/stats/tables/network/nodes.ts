import type { Network, Stage } from "./network.js";

/** The node whose rows, in some order, have this key; a new one gets its cheap bounds. */
export function nodeWithKey(network: Network, stage: Stage, key: number): number {
  const { rows, places } = network;
  const sums = new Int32Array(rows);
  let rest = key;
  let known = 0;
  for (let i = rows - 2; i >= 0; i--) {
    sums[i] = Math.floor(rest / places[i]!);
    rest -= sums[i]! * places[i]!;
    known += sums[i]!;
  }
  sums[rows - 1] = stage.left - known;
  sums.sort();
  let sortedKey = 0;
  for (let i = 0; i < rows - 1; i++) sortedKey += sums[i]! * places[i]!;
  const node = stage.index[sortedKey]! >= 0 ? stage.index[sortedKey]! : addNode(network, stage, sums);
  stage.index[sortedKey] = node;
  stage.index[key] = node;
  return node;
}

function addNode(network: Network, stage: Stage, sums: Int32Array): number {
  const node = stage.count++;
  if (node >= stage.shortest.length) grow(stage);
  stage.sums.set(sums, node * network.rows);
  stage.longest[node] = longestAtMost(network, stage, sums);
  stage.shortest[node] = shortestAtLeast(network, stage, sums);
  return node;
}

function grow(stage: Stage): void {
  stage.sums = doubled(stage.sums);
  stage.shortest = doubled(stage.shortest);
  stage.longest = doubled(stage.longest);
  stage.attained = doubled(stage.attained);
}

function doubled<T extends Int32Array | Float64Array | Uint8Array>(array: T): T {
  const larger = new (array.constructor as new (length: number) => T)(array.length * 2);
  larger.set(array);
  return larger;
}

/** No multinomial coefficient is below 1: the factorials of parts never exceed that of their sum. */
function longestAtMost({ logs, columns }: Network, stage: Stage, sums: Int32Array): number {
  let [byRows, byColumns] = [0, 0];
  for (const sum of sums) byRows += logs[sum]!;
  for (let j = stage.column; j < columns.length; j++) byColumns += logs[columns[j]!]!;
  return Math.min(byRows, byColumns);
}

/**
 * log x! is convex, so it lies above its tangent of slope log y at floor(y), y being the cell's expected count; summed
 * over cells these tangents depend on the margins alone.
 */
function shortestAtLeast({ logs, columns }: Network, stage: Stage, sums: Int32Array): number {
  const { left } = stage;
  let bound = 0;
  for (const sum of sums) {
    if (sum === 0) continue;
    for (let j = stage.column; j < columns.length; j++) {
      const expected = (sum * columns[j]!) / left;
      const whole = Math.floor(expected + 1e-12);
      bound += logs[whole]! + (logs[1]! + Math.log(expected)) * (expected - whole);
    }
  }
  return bound - 1e-9;
}
