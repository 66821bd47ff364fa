import { bandsLayer, type BandAxis, type BandRow } from "./bands-layer.js";
import { mostMarks, pitch, placed, type CaseMark, type PlacedMark } from "./case-mark.js";
import { columnsOf, type Columns, type RowText } from "./columns-of.js";
import { countedBar, barsLayer, type BarRow } from "./counted-bar.js";
import { figureWidth, type Drawing } from "./drawing.js";
import { crossesLayer, marksLayer } from "./marks-layer.js";
import { framed } from "./pixels.js";
import { textLayer, type TextRow } from "./text-layer.js";

/** One proportion: its cases, its estimate with two intervals as fractions, and what is written beside it. */
export interface CaseMarksRow extends RowText {
  readonly marks: readonly CaseMark[];
  /** Null when there is no case to estimate from. */
  readonly estimate: number | null;
  readonly interval: { readonly low: number; readonly high: number };
  /** The 50% interval. */
  readonly inner: { readonly low: number; readonly high: number };
}

export interface CaseMarksOptions {
  /** Width of the whole picture in pixels; default that of a saved figure. */
  readonly width?: number;
  /** Right end of the axis, a fraction; default 1. Small rates are read better on a shorter axis. */
  readonly axisEnd?: number;
}

/** Height of a line of marks, and of the band with the space below it. */
const lineHeight = 14;
const bandHeight = 40;

/**
 * The picture of the house: for each proportion a row of marks, one a case, filled when it succeeded and an open ring
 * when not, over its 50% interval and the interval of the chosen level.
 */
export function caseMarks(rows: readonly CaseMarksRow[], options: CaseMarksOptions = {}): Drawing {
  const { width = figureWidth, axisEnd = 1 } = options;
  const columns = columnsOf(rows, width);
  const largest = Math.max(1, ...rows.map((row) => row.marks.length));
  const drawn = {
    marks: [] as PlacedMark[],
    crosses: [] as PlacedMark[],
    bars: [] as BarRow[],
    bands: [] as BandRow[],
    labels: [] as TextRow[],
    counts: [] as TextRow[],
    notes: [] as TextRow[],
  };

  let top = 14;
  for (const [i, row] of rows.entries()) {
    const labels = columns.labels[i]!;
    if (!columns.wide) top += 17 * labels.length;
    const lines = linesOf(row, columns, top, largest);
    drawn.marks.push(...lines.marks);
    drawn.crosses.push(...lines.marks.filter((_, at) => row.marks[at]?.crossed));
    drawn.bars.push(...lines.bars);
    const band = top + lineHeight * lines.count + 7;
    drawn.labels.push(...labelRows(labels, columns, top, band));
    const { estimate, interval, inner } = row;
    if (estimate !== null)
      drawn.bands.push({ y: band, estimate, ...interval, innerLow: inner.low, innerHigh: inner.high });
    drawn.counts.push({ x: columns.textLeft, y: columns.wide ? top + 7 : top - 17, text: row.count });
    drawn.notes.push({ x: columns.textLeft, y: columns.wide ? top + 26 : band + 19, text: row.note });
    top = band + bandHeight - 7 + (columns.wide ? 0 : 12);
  }

  const extent = { width, height: top - 16, below: 26 };
  const side = columns.wide ? "left" : "right";
  const spec = framed(extent, [
    bandsLayer("bands", axisOf(columns, axisEnd), extent),
    {
      layer: [
        barsLayer("bars", extent),
        marksLayer("marks", extent),
        crossesLayer("crosses", extent),
        textLayer("labels", "label", columns.wide ? "right" : "left", extent),
        textLayer("counts", "count", side, extent),
        textLayer("notes", "note", side, extent),
      ],
    },
  ]);
  return { spec, rows: drawn };
}

function linesOf(row: CaseMarksRow, { from, to }: Columns, top: number, largest: number) {
  const successes = row.marks.filter((mark) => mark.outcome === "success").length;
  if (row.marks.length > mostMarks) {
    const perCase = (to - from) / largest;
    return { marks: [], bars: countedBar(successes, row.marks.length, { from, y: top, perCase }), count: 1 };
  }
  const perLine = Math.max(1, Math.floor((to - from) / pitch) + 1);
  const marks = row.marks.map((mark, i) =>
    placed(mark, from + 5 + pitch * (i % perLine), top + lineHeight * Math.floor(i / perLine)),
  );
  return { marks, bars: [], count: Math.max(1, Math.ceil(row.marks.length / perLine)) };
}

function labelRows(lines: readonly string[], columns: Columns, top: number, band: number): TextRow[] {
  const first = columns.wide ? (top + band) / 2 - (17 * (lines.length - 1)) / 2 : top - 17 * lines.length;
  return lines.map((text, i) => ({ x: columns.wide ? columns.labelRight : 2, y: first + 17 * i, text }));
}

function axisOf({ from, to }: Columns, end: number): BandAxis {
  const ticks = [0, 0.25, 0.5, 0.75, 1].map((share) => share * end);
  return { from, to, domain: [0, end], ticks, format: end < 0.4 ? ".1~%" : ".0%" };
}
