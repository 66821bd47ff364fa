import { placed, type CaseMark, type PlacedMark } from "./case-mark.js";
import { figureWidth, type Drawing } from "./drawing.js";
import { marksLayer } from "./marks-layer.js";
import { ink } from "./palette.js";
import { framed, pixels, type Extent, type Layer } from "./pixels.js";
import { fontSizeOf, textLayer } from "./text-layer.js";
import { textWidth } from "./text-width.js";

export interface CaseRunStep {
  /** Left out where there are too many cases for a mark each. */
  readonly mark?: CaseMark;
  /** Place of the case in the order, from 0; default that among the steps. */
  readonly place?: number;
  /** Failures so far less those expected. */
  readonly excess: number;
}

const [left, right, top, bottom] = [44, 14, 30, 206];
const ring = { failed: 66, worked: 18 };

/**
 * Consecutive cases: the line rises with each failure and sinks with each success; no change is the level line at zero.
 * @param options.cases how many there are in all, where not each is among the steps
 */
export function caseRun(
  steps: readonly CaseRunStep[],
  text: { readonly x: string; readonly y: string },
  options: { readonly width?: number; readonly cases?: number } = {},
): Drawing {
  const { width = figureWidth, cases = steps.length } = options;
  const extent = { width, height: 250, below: 0 };
  const largest = steps.reduce((most, { excess }) => Math.max(most, Math.abs(excess)), 1);
  const most = Math.ceil(largest);
  const x = (i: number): number => left + ((i + 1) / Math.max(1, cases)) * (width - left - right);
  const y = (excess: number): number => top + ((most - excess) / (2 * most)) * (bottom - top);
  const points = steps.map(({ excess, place }, i) => ({ x: x(place ?? i), y: y(excess) }));
  const marks = steps.flatMap(({ mark }, i): PlacedMark[] => {
    if (mark === undefined) return [];
    const size = mark.outcome === "failure" ? ring.failed : ring.worked;
    return [{ ...placed(mark, points[i]!.x, points[i]!.y), size }];
  });
  const end = String(cases);
  const levels = [most, 0, -most];
  const rows = {
    levels: levels.map((level) => ({ x: left, x2: width - right, y: y(level) })),
    line: [{ x: left, y: y(0) }, ...points].map((point, order) => ({
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
      { x: Math.min(x(cases - 1), width - textWidth(end, fontSizeOf("note")) / 2), y: bottom + 16, text: end },
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
