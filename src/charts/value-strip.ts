import { axisRoom } from "./axis-title.js";
import { bandsLayer, type BandRow } from "./bands-layer.js";
import { pitch, placed, type CaseMark, type PlacedMark } from "./case-mark.js";
import { columnsOf, type RowText } from "./columns-of.js";
import { figureWidth, type Drawing } from "./drawing.js";
import { marksLayer } from "./marks-layer.js";
import { framed } from "./pixels.js";
import { textLayer, type TextRow } from "./text-layer.js";

/** One group of cases with a measured value each. */
export interface ValueStripRow extends RowText {
  readonly cases: readonly { readonly mark: CaseMark; readonly value: number }[];
  /** Middle, quartiles and extremes, in the unit of the values; null when there is no case. */
  readonly summary: {
    readonly median: number;
    readonly q1: number;
    readonly q3: number;
    readonly low: number;
    readonly high: number;
  } | null;
}

const bandHeight = 34;

/** Measured values, every case a mark at its value, over the range with the quartiles and the median. */
export function valueStrip(
  rows: readonly ValueStripRow[],
  axis: { readonly title: string; readonly reference?: number },
  options: { readonly width?: number } = {},
): Drawing {
  const { width = figureWidth } = options;
  const columns = columnsOf(rows, width);
  const values = rows.flatMap(({ cases, summary }) => [
    ...cases.map(({ value }) => value),
    ...(summary ? [summary.low, summary.high] : []),
  ]);
  const { domain, ticks } = roundAxis([...values, ...(axis.reference === undefined ? [] : [axis.reference])]);
  const scale = (value: number): number =>
    columns.from + ((value - domain[0]) / (domain[1] - domain[0])) * (columns.to - columns.from);
  const marks: PlacedMark[] = [];
  const bands: BandRow[] = [];
  const [labels, counts, notes]: [TextRow[], TextRow[], TextRow[]] = [[], [], []];
  let top = 14;
  for (const [i, row] of rows.entries()) {
    if (!columns.wide) top += 17 * columns.labels[i]!.length;
    const stacked = stack(row.cases, scale);
    const height = 12 * Math.max(1, ...stacked.map(({ level }) => level + 1));
    marks.push(...stacked.map(({ mark, x, level }) => placed(mark, x, top + height - 12 * (level + 1))));
    const band = top + height + 6;
    const { summary } = row;
    if (summary)
      bands.push({
        y: band,
        estimate: summary.median,
        low: summary.low,
        high: summary.high,
        innerLow: summary.q1,
        innerHigh: summary.q3,
      });
    const middle = (top + band) / 2;
    const lines = columns.labels[i]!;
    const labelTop = columns.wide ? middle - 8.5 * (lines.length - 1) : top - 17 * lines.length;
    labels.push(...lines.map((text, l) => ({ x: columns.wide ? columns.labelRight : 2, y: labelTop + 17 * l, text })));
    counts.push({ x: columns.textLeft, y: columns.wide ? middle - 9 : top - 17, text: row.count });
    notes.push({ x: columns.textLeft, y: columns.wide ? middle + 10 : band + 19, text: row.note });
    top = band + bandHeight - 6 + (columns.wide ? 0 : 12);
  }
  const extent = { width, height: Math.max(1, top - 14), below: axisRoom(axis.title, columns) };
  const side = columns.wide ? "left" : "right";
  const { from, to } = columns;
  const spec = framed(extent, [
    bandsLayer("bands", { from, to, domain, ticks, format: "d", ...axis }, extent),
    {
      layer: [
        marksLayer("marks", extent),
        textLayer("labels", "label", columns.wide ? "right" : "left", extent),
        textLayer("counts", "count", side, extent),
        textLayer("notes", "note", side, extent),
      ],
    },
  ]);
  return { spec, rows: { bands, marks, labels, counts, notes } };
}

/** Marks side by side stand on one line; one that would cover another goes a level up. */
function stack(cases: ValueStripRow["cases"], scale: (value: number) => number) {
  const ends: number[] = [];
  return cases
    .toSorted((a, b) => a.value - b.value)
    .map(({ mark, value }) => {
      const x = scale(value);
      const free = ends.findIndex((end) => end <= x - pitch + 1);
      const level = free < 0 ? ends.length : free;
      ends[level] = x;
      return { mark, x, level };
    });
}

/** Ends and ticks in round numbers that hold every value. */
function roundAxis(values: readonly number[]): {
  readonly domain: readonly [number, number];
  readonly ticks: readonly number[];
} {
  const [low, high] = [Math.min(...values, 0), Math.max(...values, 1)];
  const step = [1, 2, 5, 10, 20, 50, 100, 200, 500, 1000].find((one) => (high - low) / one <= 6) ?? high - low;
  const start = Math.floor(low / step) * step;
  const ticks = Array.from({ length: Math.ceil((high - start) / step) + 1 }, (_, i) => start + i * step);
  return { domain: [start, ticks.at(-1)!], ticks };
}
