import { mostMarks, pitch, placed, type PlacedMark } from "./case-mark.js";
import { barsLayer, type BarRow } from "./counted-bar.js";
import { figureWidth, type Drawing } from "./drawing.js";
import { marksLayer } from "./marks-layer.js";
import { framed } from "./pixels.js";
import { textLayer, type TextRow } from "./text-layer.js";

/** One poll: hands for each step, and what is written above them. */
export interface HandRow {
  readonly label: string;
  readonly hands: readonly number[];
  /** Before: open rings; after: filled. */
  readonly filled: boolean;
}

export interface HandHistogramText {
  /** Under each column. */
  readonly steps: readonly string[];
  /** Under the lowest axis. */
  readonly axis: string;
}

const tallest = 130;

/** Hands over the step they were raised for, a mark a hand, one poll under the other; many hands merge into counted bars. */
export function handHistogram(
  polls: readonly HandRow[],
  text: HandHistogramText,
  options: { readonly width?: number } = {},
): Drawing {
  const { width = figureWidth } = options;
  const column = width / text.steps.length;
  const abreast = Math.max(1, Math.min(5, Math.floor((column - 4) / pitch)));
  const largest = Math.max(1, ...polls.flatMap(({ hands }) => hands));
  const merged = polls.some(({ hands }) => hands.reduce((sum, n) => sum + n, 0) > mostMarks);
  const perHand = tallest / largest;
  const high = merged ? tallest : Math.max(2, Math.ceil(largest / abreast)) * pitch;
  const rows = {
    marks: [] as PlacedMark[],
    bars: [] as BarRow[],
    labels: [] as TextRow[],
    counts: [] as TextRow[],
    steps: [] as TextRow[],
    axis: [] as TextRow[],
  };
  let top = 14;
  for (const { label, hands, filled } of polls) {
    rows.labels.push({ x: 2, y: top, text: label });
    const base = top + 32 + high;
    rows.bars.push({ x: 2, x2: width - 2, y: base + 8, y2: base + 9, fill: "soft", stroke: "soft" });
    for (const [i, n] of hands.entries()) {
      const middle = column * (i + 0.5);
      rows.steps.push({ x: middle, y: base + 20, text: text.steps[i]! });
      if (n === 0) continue;
      const lines = Math.ceil(n / abreast);
      const above = merged ? perHand * n + 8 : pitch * lines + 3;
      rows.counts.push({ x: middle, y: base - above, text: String(n) });
      if (merged) rows.bars.push(bar(middle, Math.min(18, column / 2 - 2), base + 5, perHand * n, filled));
      else
        for (let k = 0; k < n; k++) {
          const across = Math.min(abreast, n - abreast * Math.floor(k / abreast));
          const x = middle + pitch * ((k % abreast) - (across - 1) / 2);
          const y = base - pitch * Math.floor(k / abreast);
          rows.marks.push(placed({ outcome: filled ? "success" : "failure", technique: "closed" }, x, y));
        }
    }
    top = base + 46;
  }
  rows.axis.push({ x: width / 2, y: top - 8, text: text.axis });
  const extent = { width, height: top + 4 };
  return {
    spec: framed(extent, [
      {
        layer: [
          barsLayer("bars", extent),
          marksLayer("marks", extent),
          textLayer("labels", "label", "left", extent),
          textLayer("counts", "count", "center", extent),
          textLayer("steps", "note", "center", extent),
          textLayer("axis", "note", "center", extent),
        ],
      },
    ]),
    rows,
  };
}

function bar(middle: number, half: number, base: number, height: number, filled: boolean): BarRow {
  return {
    x: middle - half,
    x2: middle + half,
    y: base - height,
    y2: base,
    fill: filled ? "closed" : "none",
    stroke: "closed",
  };
}
