/** Paths that end in one node, by rising value; paths of one probability are one entry with its count. */
export interface PathList {
  readonly values: Float64Array;
  readonly counts: Float64Array;
  readonly hashes: Int32Array;
}

/** Paths on their way to the next stage, merged by node and product of factorials: an open-addressed hash table. */
export interface PathTable {
  size: number;
  nodes: Int32Array;
  hashes: Int32Array;
  values: Float64Array;
  counts: Float64Array;
}

/** Values of equal products differ by rounding only. */
const SAME = 1e-8;
const EMPTY = -1;

export function newPathTable(capacity = 1 << 12): PathTable {
  return {
    size: 0,
    nodes: new Int32Array(capacity).fill(EMPTY),
    hashes: new Int32Array(capacity),
    values: new Float64Array(capacity),
    counts: new Float64Array(capacity),
  };
}

function placeOf(node: number, hash: number): number {
  const mixed = Math.imul(hash, 0x9e3779b1) ^ Math.imul(node, 0x85ebca6b);
  return mixed ^ (mixed >>> 15);
}

/** Adds `count` paths of one value and hash to a node. */
export function addPath(table: PathTable, node: number, hash: number, value: number, count: number): void {
  const { nodes, hashes, values, counts } = table;
  const mask = nodes.length - 1;
  let at = placeOf(node, hash) & mask;
  for (; nodes[at] !== EMPTY; at = (at + 1) & mask)
    if (nodes[at] === node && hashes[at] === hash && Math.abs(values[at]! - value) < SAME) {
      counts[at]! += count;
      return;
    }
  nodes[at] = node;
  hashes[at] = hash;
  values[at] = value;
  counts[at] = count;
  if (++table.size * 2 > nodes.length) enlarge(table);
}

function enlarge(table: PathTable): void {
  const larger = newPathTable(table.nodes.length * 2);
  const mask = larger.nodes.length - 1;
  table.nodes.forEach((node, i) => {
    if (node === EMPTY) return;
    let at = placeOf(node, table.hashes[i]!) & mask;
    while (larger.nodes[at] !== EMPTY) at = (at + 1) & mask;
    larger.nodes[at] = node;
    larger.hashes[at] = table.hashes[i]!;
    larger.values[at] = table.values[i]!;
    larger.counts[at] = table.counts[i]!;
  });
  larger.size = table.size;
  Object.assign(table, larger);
}

/** The table's paths as one sorted list a node; nodes without paths have none. */
export function pathLists(table: PathTable, nodeCount: number): (PathList | undefined)[] {
  const starts = new Int32Array(nodeCount + 1);
  for (const node of table.nodes) if (node !== EMPTY) starts[node + 1]!++;
  for (let i = 0; i < nodeCount; i++) starts[i + 1]! += starts[i]!;
  const next = starts.slice();
  const places = new Int32Array(table.size);
  table.nodes.forEach((node, at) => {
    if (node !== EMPTY) places[next[node]!++] = at;
  });
  return Array.from({ length: nodeCount }, (_, node) => {
    const own = places.subarray(starts[node], starts[node + 1]);
    return own.length === 0 ? undefined : listOf(table, own);
  });
}

function listOf(table: PathTable, places: Int32Array): PathList {
  sortByValue(places, table.values);
  const values = new Float64Array(places.length);
  const counts = new Float64Array(places.length);
  const hashes = new Int32Array(places.length);
  places.forEach((at, i) => {
    values[i] = table.values[at]!;
    counts[i] = table.counts[at]!;
    hashes[i] = table.hashes[at]!;
  });
  return { values, counts, hashes };
}

/** Quicksort of places by the values they point to, insertion sort at the end: no call a comparison. */
function sortByValue(places: Int32Array, values: Float64Array): void {
  const open = [0, places.length - 1];
  while (open.length > 0) {
    let high = open.pop()!;
    let low = open.pop()!;
    while (high - low > 16) {
      const middle = values[places[(low + high) >> 1]!]!;
      let [i, j] = [low, high];
      while (i <= j) {
        while (values[places[i]!]! < middle) i++;
        while (values[places[j]!]! > middle) j--;
        if (i > j) break;
        const swapped = places[i]!;
        places[i++] = places[j]!;
        places[j--] = swapped;
      }
      // The shorter part waits, so that few are open at a time.
      if (j - low < high - i) {
        open.push(low, j);
        low = i;
      } else {
        open.push(i, high);
        high = j;
      }
    }
    for (let i = low + 1; i <= high; i++) {
      const place = places[i]!;
      let j = i - 1;
      for (; j >= low && values[places[j]!]! > values[place]!; j--) places[j + 1] = places[j]!;
      places[j + 1] = place;
    }
  }
}
