import type { PlacedMark } from "./case-mark.js";
import { colours, ink } from "./palette.js";
import { pixels, type Extent, type Layer } from "./pixels.js";

const shapes = { domain: ["closed", "assisted", "open"], range: ["circle", "diamond", "square"] };

const field = <K extends keyof PlacedMark>(name: K) => ({ field: name, type: "nominal" as const, legend: null });

/** Every case a mark, from rows of `PlacedMark` in the data set named `data`. */
export function marksLayer(data: string, extent: Extent): Layer {
  const { x, y } = pixels(extent);
  return {
    data: { name: data },
    mark: { type: "point", filled: false, strokeWidth: 1.8, opacity: 1 },
    encoding: {
      x: x("x"),
      y: y("y"),
      shape: { ...field("shape"), scale: shapes },
      size: { field: "size" satisfies keyof PlacedMark, type: "quantitative", scale: null },
      fill: { ...field("fill"), scale: colours },
      // A full disc in a dashed line looks like a cogwheel.
      fillOpacity: {
        ...field("line"),
        type: "ordinal" as const,
        scale: { domain: ["full", "dashed"], range: [1, 0.35] },
      },
      stroke: { ...field("stroke"), scale: colours },
      strokeDash: { ...field("line"), scale: { domain: ["full", "dashed"], range: [[], [2.2, 1.8]] } },
    },
  };
}

/** A cross over each row of the data set named `data`. */
export function crossesLayer(data: string, extent: Extent): Layer {
  const { x, y } = pixels(extent);
  return {
    data: { name: data },
    mark: {
      type: "point",
      filled: false,
      shape: "M-1,-1L1,1M1,-1L-1,1",
      size: 96,
      stroke: ink("ink"),
      strokeWidth: 1.6,
      opacity: 1,
    },
    encoding: { x: x("x"), y: y("y") },
  };
}
