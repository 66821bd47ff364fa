import type { MarkTechnique } from "./case-mark.js";
import { colours, type Ink } from "./palette.js";
import { pixels, type Extent, type Layer } from "./pixels.js";

/** One part of a bar in pixels. */
export interface BarRow {
  readonly x: number;
  readonly x2: number;
  readonly y: number;
  readonly y2: number;
  readonly fill: Ink | "none";
  readonly stroke: Ink;
}

/** Many cases as one bar, filled for the successes and an open frame for the rest; `perCase` pixels for each. */
export function countedBar(
  successes: number,
  trials: number,
  place: {
    readonly from: number;
    readonly y: number;
    readonly perCase: number;
    readonly technique?: MarkTechnique | undefined;
  },
): BarRow[] {
  const { from, perCase, technique } = place;
  const [filled, open] = technique ? [technique, technique] : (["closed", "open"] as const);
  const middle = from + perCase * successes;
  const y = { y: place.y - 5, y2: place.y + 5 };
  const parts: BarRow[] = [
    { x: from, x2: middle, ...y, fill: filled, stroke: filled },
    { x: middle, x2: from + perCase * trials, ...y, fill: "none", stroke: open },
  ];
  return parts.filter((part) => part.x2 > part.x);
}

/** Counted bars from rows of `BarRow` in the data set named `data`. */
export function barsLayer(data: string, extent: Extent): Layer {
  const { x, y } = pixels(extent);
  const colour = (field: "fill" | "stroke") => ({ field, type: "nominal" as const, legend: null, scale: colours });
  return {
    data: { name: data },
    mark: { type: "rect", strokeWidth: 1.6, opacity: 1 },
    encoding: {
      x: x("x"),
      x2: { field: "x2" },
      y: y("y"),
      y2: { field: "y2" },
      fill: colour("fill"),
      stroke: colour("stroke"),
    },
  };
}
