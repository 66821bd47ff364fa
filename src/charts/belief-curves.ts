import { bandsLayer, type BandRow } from "./bands-layer.js";
import { columnsOf, type RowText } from "./columns-of.js";
import { figureWidth, type Drawing } from "./drawing.js";
import { ink } from "./palette.js";
import { framed, pixels, type Extent, type Layer } from "./pixels.js";
import { textLayer } from "./text-layer.js";

/** One curve over the shares from 0 to 1, with its mean and interval under it. */
export interface BeliefRow extends RowText {
  readonly curve: readonly { readonly x: number; readonly density: number }[];
  readonly mean: number;
  readonly interval: { readonly low: number; readonly high: number };
}

const high = 150;
const rowHeight = 40;

/** Two curves over one axis, the first dashed and the second drawn full, each with its interval beneath. */
export function beliefCurves(
  rows: { readonly before: BeliefRow; readonly after: BeliefRow },
  options: { readonly width?: number } = {},
): Drawing {
  const { width = figureWidth } = options;
  const both = [rows.before, rows.after];
  const { wide, from, to, labelRight, textLeft } = columnsOf(both, width);
  const most = Math.max(...both.flatMap(({ curve }) => curve.map(({ density }) => density)));
  const place = ({ curve }: BeliefRow) =>
    curve.map(({ x, density }) => ({ x: from + (to - from) * x, y: 6 + high - (high * density) / most }));
  const y = (i: number): number => high + 38 + i * (wide ? rowHeight : rowHeight + 18);
  const extent: Extent = { width, height: y(1) + (wide ? 14 : 32), below: 26 };
  const bands = both.map(({ mean, interval }, i): BandRow => ({
    y: y(i),
    estimate: mean,
    ...interval,
    innerLow: mean,
    innerHigh: mean,
  }));
  const text = (of: "label" | "count" | "note", x: number, up: number) =>
    both.map((row, i) => ({ x, y: y(i) + up, text: row[of] }));
  const side = wide ? "left" : "right";
  return {
    spec: framed(extent, [
      bandsLayer("bands", { domain: [0, 1], ticks: [0, 0.25, 0.5, 0.75, 1], format: ".0%", from, to }, extent),
      {
        layer: [
          line("before", extent, { stroke: ink("soft"), strokeDash: [5, 4] }),
          line("after", extent, { stroke: ink("closed") }),
          textLayer("labels", "label", wide ? "right" : "left", extent),
          textLayer("counts", "count", side, extent),
          textLayer("notes", "note", side, extent),
        ],
      },
    ]),
    rows: {
      bands,
      before: place(rows.before),
      after: place(rows.after),
      labels: text("label", wide ? labelRight : 2, wide ? 0 : -18),
      counts: text("count", textLeft, wide ? -9 : -18),
      notes: text("note", textLeft, wide ? 10 : 17),
    },
  };
}

function line(
  data: string,
  extent: Extent,
  stroke: { readonly stroke: string; readonly strokeDash?: number[] },
): Layer {
  const { x, y } = pixels(extent);
  return {
    data: { name: data },
    mark: { type: "line", strokeWidth: 2.4, ...stroke },
    encoding: { x: x("x"), y: y("y") },
  };
}
