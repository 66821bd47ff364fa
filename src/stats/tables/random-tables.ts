import { random } from "../../numeric/random.js";
import { columnSums, rowSums, type Contingency } from "./contingency.js";
import { logFactorials, slopeFor, tiltedLogFactorials } from "./log-factorials.js";
import { TOLERANCE } from "./network/network.js";

/**
 * How many of `simulated` random tables with the margins of a table are no likelier than it.
 *
 * @see Patefield 1981, Appl Stat 30:91-97, algorithm AS 159: cell by cell, each from its conditional distribution
 */
export function countExtremeTables(table: Contingency, simulated: number, seed: number): number {
  const rows = rowSums(table);
  const columns = columnSums(table);
  const total = rows.reduce((sum, row) => sum + row, 0);
  const exact = logFactorials(total);
  const values = tiltedLogFactorials(exact, slopeFor(total / (rows.length * columns.length)));
  let threshold = -TOLERANCE;
  for (const row of table) for (const count of row) threshold += values[count]!;

  const draw = hypergeometricDrawer(exact.high, random(seed).uniform);
  const left = new Int32Array(columns.length);
  let extreme = 0;
  for (let i = 0; i < simulated; i++) {
    left.set(columns);
    if (randomTableValue(rows, left, total, values, draw) >= threshold) extreme++;
  }
  return extreme;
}

type Draw = (need: number, column: number, all: number) => number;

/** The sum of the values of the cells of one random table; `left` starts as the column sums. */
function randomTableValue(
  rows: readonly number[],
  left: Int32Array,
  total: number,
  values: Float64Array,
  draw: Draw,
): number {
  const last = left.length - 1;
  let value = 0;
  let cases = total;
  for (let i = 0; i < rows.length - 1; i++) {
    let need = rows[i]!;
    let all = cases;
    cases -= need;
    for (let j = 0; j < last; j++) {
      const column = left[j]!;
      const taken = need === 0 || column === 0 ? 0 : draw(need, column, all);
      value += values[taken]!;
      left[j] = column - taken;
      need -= taken;
      all -= column;
    }
    value += values[need]!;
    left[last] = left[last]! - need;
  }
  for (let j = 0; j <= last; j++) value += values[left[j]!]!;
  return value;
}

/** Draws from a hypergeometric distribution by walking outward from its centre. */
function hypergeometricDrawer(logs: Float64Array, uniform: () => number): Draw {
  return (need, column, all) => {
    const others = all - column - need;
    const least = others < 0 ? -others : 0;
    const most = need < column ? need : column;
    if (least === most) return least;
    const centre = Math.min(most, Math.max(least, Math.floor((need * column) / all + 0.5)));
    const atCentre = Math.exp(
      logs[need]! +
        logs[all - need]! +
        logs[column]! +
        logs[all - column]! -
        logs[all]! -
        (logs[centre]! + logs[need - centre]! + logs[column - centre]! + logs[others + centre]!),
    );
    for (;;) {
      let rest = uniform() - atCentre;
      if (rest < 0) return centre;
      let [above, below] = [centre, centre];
      let [up, down] = [atCentre, atCentre];
      while (above < most || below > least) {
        if (above < most) {
          up *= ((need - above) * (column - above)) / ((above + 1) * (others + above + 1));
          above++;
          rest -= up;
          if (rest < 0) return above;
        }
        if (below > least) {
          down *= (below * (others + below)) / ((need - below + 1) * (column - below + 1));
          below--;
          rest -= down;
          if (rest < 0) return below;
        }
      }
      // The masses add up to a rounding error less than 1, and the draw fell into it: draw again.
    }
  };
}
