import { pitch, placed, type PlacedMark } from "./case-mark.js";
import { columnsOf } from "./columns-of.js";
import { barsLayer, type BarRow } from "./counted-bar.js";
import { figureWidth, type Drawing } from "./drawing.js";
import { marksLayer } from "./marks-layer.js";
import { framed } from "./pixels.js";
import { textLayer, type TextRow } from "./text-layer.js";

/** A rung of the ladder (who is in) or, between two rungs, some who left. */
export interface LadderStep {
  readonly kind: "rung" | "leavers";
  readonly label: string;
  /** Cases on the rung, or cases that left. */
  readonly cases: number;
  /** "55 limbs in 52 children" */
  readonly text: string;
}

/** More leavers than this merge into a frame. */
const mostRings = 12;

/** The denominators, each the one above less those who left: leavers stand, a ring each, under the end of the bar that they leave. */
export function denominatorLadder(steps: readonly LadderStep[], options: { readonly width?: number } = {}): Drawing {
  const { width = figureWidth } = options;
  const columns = columnsOf(
    steps.map((step) => ({ label: step.label, count: step.text, note: "" })),
    width,
  );
  const { wide, from, to } = columns;
  const perCase = (to - from) / Math.max(1, ...steps.map((step) => step.cases));
  const drawn = {
    bars: [] as BarRow[],
    marks: [] as PlacedMark[],
    labels: [] as TextRow[],
    counts: [] as TextRow[],
    notes: [] as TextRow[],
  };
  let y = 14;
  let left = 0;
  for (const [i, step] of steps.entries()) {
    const labels = columns.labels[i]!;
    const first = wide ? y : y - 2;
    const bar = wide ? y + 8.5 * (labels.length - 1) : y + 17 * labels.length;
    drawn.labels.push(...labels.map((text, l) => ({ x: wide ? columns.labelRight : 2, y: first + 17 * l, text })));
    const said = { x: columns.textLeft, y: wide ? bar : first, text: step.text };
    if (step.kind === "rung") {
      drawn.counts.push(said);
      drawn.bars.push({
        x: from,
        x2: from + perCase * step.cases,
        y: bar - 6,
        y2: bar + 6,
        fill: "closed",
        stroke: "closed",
      });
      left = step.cases;
    } else {
      drawn.notes.push(said);
      const end = from + perCase * left;
      if (step.cases > mostRings)
        drawn.bars.push({
          x: end - perCase * step.cases,
          x2: end,
          y: bar - 5,
          y2: bar + 5,
          fill: "none",
          stroke: "open",
        });
      for (let k = 0; k < (step.cases > mostRings ? 0 : step.cases); k++)
        drawn.marks.push(placed({ outcome: "failure" }, end - 5 - pitch * k, bar));
      left -= step.cases;
    }
    y = bar + (wide ? 17 * Math.ceil((labels.length - 1) / 2) : 0) + 26;
  }

  const extent = { width, height: y - 10 };
  const side = wide ? "left" : "right";
  const layer = [
    barsLayer("bars", extent),
    marksLayer("marks", extent),
    textLayer("labels", "label", wide ? "right" : "left", extent),
    textLayer("counts", "count", side, extent),
    textLayer("notes", "note", side, extent),
  ];
  return { spec: framed(extent, [{ layer }]), rows: drawn };
}
