import { axisTitle } from "./axis-title.js";
import { ink } from "./palette.js";
import { pixels, type Extent, type Layer } from "./pixels.js";

/** An estimate with its two bands on the axis of the picture, at the height `y` in pixels. */
export interface BandRow {
  readonly y: number;
  readonly estimate: number;
  readonly low: number;
  readonly high: number;
  readonly innerLow: number;
  readonly innerHigh: number;
}

/** The axis that bands are drawn on: where it lies in pixels, what it spans, and what is written on it. */
export interface BandAxis {
  readonly from: number;
  readonly to: number;
  readonly domain: readonly [number, number];
  readonly ticks: readonly number[];
  /** d3 format of the numbers on the axis. */
  readonly format: string;
  /** The numbers are shares and the axis shows them in hundredths, without a sign of percent. */
  readonly points?: boolean;
  /** What the axis measures. */
  readonly title?: string;
  readonly logarithmic?: boolean;
  /** A value to compare with, drawn upright at every band (no difference). */
  readonly reference?: number;
}

/** Bands of two levels with a stroke at the estimate, from rows of `BandRow` in the data set named `data`. */
export function bandsLayer(data: string, axis: BandAxis, extent: Extent): Layer {
  const { y } = pixels(extent);
  const scale = {
    domain: [...axis.domain],
    range: [axis.from, axis.to],
    nice: false,
    clamp: true,
    ...(axis.logarithmic ? { type: "log" as const } : { zero: false }),
  };
  const drawn = { orient: "bottom" as const, grid: false, domain: false, ticks: false, labelPadding: 6 };
  const labels = {
    ...drawn,
    values: [...axis.ticks],
    labelOverlap: false,
    labelFlush: false,
    title: axis.title === undefined ? null : axisTitle(axis.title, axis),
    ...(axis.points
      ? { labelExpr: `datum.value === 0 ? "0" : format(100 * datum.value, "${axis.format}")` }
      : { format: axis.format }),
  };
  const x = (field: keyof BandRow) => ({ field, type: "quantitative" as const, scale, axis: labels });
  const line = (low: keyof BandRow, high: keyof BandRow, strokeWidth: number, opacity: number): Layer => ({
    mark: { type: "rule", stroke: ink("closed"), strokeWidth, opacity },
    encoding: { x: x(low), x2: { field: high }, y: y("y") },
  });
  return {
    data: { name: data },
    layer: [
      ...(axis.reference === undefined
        ? []
        : [
            {
              mark: {
                type: "tick" as const,
                orient: "vertical" as const,
                size: 26,
                thickness: 1.2,
                color: ink("soft"),
                opacity: 1,
              },
              encoding: { x: { datum: axis.reference, scale, axis: labels, type: "quantitative" }, y: y("y") },
            },
          ]),
      {
        mark: { type: "rule", stroke: ink("line"), strokeWidth: 1.2 },
        encoding: {
          x: { datum: axis.domain[0], scale, axis: labels, type: "quantitative" },
          x2: { datum: axis.domain[1] },
          y: y("y"),
        },
      },
      line("low", "high", 4, 0.4),
      line("innerLow", "innerHigh", 8, 0.8),
      {
        mark: { type: "tick", orient: "vertical", size: 15, thickness: 2.2, color: ink("ink"), opacity: 1 },
        encoding: { x: x("estimate"), y: y("y") },
      },
    ],
  } as Layer;
}
