import { placed, type CaseMark, type PlacedMark } from "./case-mark.js";
import { figureWidth, type Drawing } from "./drawing.js";
import { marksLayer } from "./marks-layer.js";
import { ink } from "./palette.js";
import { framed, pixels, type Extent, type Layer } from "./pixels.js";
import { textLayer } from "./text-layer.js";

export interface CaseRunStep {
  readonly mark: CaseMark;
  /** Failures so far less those expected. */
  readonly excess: number;
}

const [left, right, top, bottom] = [44, 14, 30, 206];
const ring = { failed: 66, worked: 18 };

/**
 * Consecutive cases: the line rises with each failure and sinks with each success; no change is the level line at zero.
 * @param options.oneIn of so many cases one is among the steps; default 1
 * @param options.cases how many there are in all; default the steps
 */
export function caseRun(
  steps: readonly CaseRunStep[],
  text: { readonly x: string; readonly y: string },
  options: { readonly width?: number; readonly oneIn?: number; readonly cases?: number } = {},
): Drawing {
  const { width = figureWidth, oneIn = 1, cases = steps.length } = options;
  const extent = { width, height: 250, below: 0 };
  const largest = steps.reduce((most, { excess }) => Math.max(most, Math.abs(excess)), 1);
  const most = Math.ceil(largest);
  const x = (i: number): number => left + ((i * oneIn + 1) / Math.max(1, cases)) * (width - left - right);
  const y = (excess: number): number => top + ((most - excess) / (2 * most)) * (bottom - top);
  const marks = steps.map(({ mark, excess }, i): PlacedMark => ({
    ...placed(mark, x(i), y(excess)),
    size: mark.outcome === "failure" ? ring.failed : ring.worked,
  }));
  const levels = [most, 0, -most];
  const rows = {
    levels: levels.map((level) => ({ x: left, x2: width - right, y: y(level) })),
    line: [{ x: left, y: y(0) }, ...marks.map((mark) => ({ x: mark.x, y: mark.y }))].map((point, order) => ({
      ...point,
      order,
    })),
    marks,
    scale: levels.map((level) => ({
      x: left - 8,
      y: y(level),
      text: level > 0 ? `+${level}` : level < 0 ? `\u2212${-level}` : "0",
    })),
    ends: [
      { x: x(0), y: bottom + 16, text: "1" },
      { x: x((cases - 1) / oneIn), y: bottom + 16, text: String(cases) },
    ],
    titles: [
      { x: left, y: bottom + 36, text: text.x },
      { x: left, y: 10, text: text.y },
    ],
  };
  const spec = framed(extent, [
    {
      layer: [
        levelLines("levels", extent),
        runLine("line", extent),
        marksLayer("marks", extent),
        textLayer("scale", "note", "right", extent),
        textLayer("ends", "note", "center", extent),
        textLayer("titles", "note", "left", extent),
      ],
    },
  ]);
  return { spec, rows };
}

function levelLines(data: string, extent: Extent): Layer {
  const { x, y } = pixels(extent);
  return {
    data: { name: data },
    mark: { type: "rule", stroke: ink("line"), strokeWidth: 1.2 },
    encoding: { x: x("x"), x2: { field: "x2" }, y: y("y") },
  };
}

function runLine(data: string, extent: Extent): Layer {
  const { x, y } = pixels(extent);
  return {
    data: { name: data },
    mark: { type: "line", stroke: ink("ink"), strokeWidth: 1.4, interpolate: "linear", tooltip: null },
    encoding: { x: x("x"), y: y("y"), order: { field: "order", type: "quantitative" } },
  };
}
