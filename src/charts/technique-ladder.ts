import { pitch, placed, techniques, type CaseMark, type MarkTechnique, type PlacedMark } from "./case-mark.js";
import { figureWidth, type Drawing } from "./drawing.js";
import { marksLayer } from "./marks-layer.js";
import { framed } from "./pixels.js";
import { textLayer, type TextRow } from "./text-layer.js";
import { textWidth } from "./text-width.js";
import { wrapText } from "./wrap-text.js";

/** A case at the step where it ended; `first` is the technique it began with when that was another one. */
export interface LadderMark extends CaseMark {
  readonly technique: MarkTechnique;
  readonly first?: MarkTechnique;
}

export interface TechniqueLadderRow {
  readonly label: string;
  readonly marks: readonly LadderMark[];
  /** What is written over the cases of each step: their number. */
  readonly counts: Readonly<Record<MarkTechnique, string>>;
}

/** A converted case needs room for the outline of its first technique. */
const wideSlot = 17;
const ring = { closed: 190, assisted: 250, open: 180 } as const;

/**
 * How far up the ladder each case went: one column a step (closed, assisted, open), each case in the column of its
 * final technique. A converted case stands in the outline of the technique it began with.
 */
export function techniqueLadder(
  rows: readonly TechniqueLadderRow[],
  heads: Readonly<Record<MarkTechnique, string>>,
  options: { readonly width?: number } = {},
): Drawing {
  const { width = figureWidth } = options;
  const labelWidth = Math.max(24, ...rows.map((row) => textWidth(row.label, 14, "serifBold")));
  const from = Math.min(labelWidth, 0.3 * width) + 22;
  const column = (width - from) / techniques.length;
  const drawn = {
    marks: [] as PlacedMark[],
    outlines: [] as PlacedMark[],
    labels: [] as TextRow[],
    heads: [] as TextRow[],
    counts: [] as TextRow[],
  };

  const headLines = techniques.map((technique) => wrapText(heads[technique], column - 8, 13));
  for (const [c, lines] of headLines.entries())
    drawn.heads.push(...lines.map((text, l) => ({ x: from + column * c, y: 12 + 16 * l, text })));
  let top = 20 + 16 * Math.max(1, ...headLines.map((lines) => lines.length));
  for (const row of rows) {
    let bottom = top + 26;
    for (const [c, technique] of techniques.entries()) {
      const marks = row.marks.filter((mark) => mark.technique === technique).toSorted((a, b) => rank(a) - rank(b));
      const x = from + column * c;
      drawn.counts.push({ x, y: top + 4, text: row.counts[technique] });
      bottom = Math.max(bottom, placeStep(marks, { x, y: top + 22, width: column - 10 }, drawn));
    }
    drawn.labels.push({ x: from - 22, y: top + 4, text: row.label });
    top = bottom + 24;
  }

  const extent = { width, height: top - 8 };
  const layer = [
    marksLayer("outlines", extent),
    marksLayer("marks", extent),
    textLayer("labels", "label", "right", extent),
    textLayer("heads", "note", "left", extent),
    textLayer("counts", "count", "left", extent),
  ];
  return { spec: framed(extent, [{ layer }]), rows: drawn };
}

/** Successes first, then failures, then what is only supposed; converted cases behind the others. */
const rank = ({ outcome, supposed, first }: LadderMark): number =>
  (first === undefined ? 0 : 4) + (supposed ? 2 : 0) + (outcome === "success" ? 0 : 1);

function placeStep(
  marks: readonly LadderMark[],
  room: { readonly x: number; readonly y: number; readonly width: number },
  drawn: { readonly marks: PlacedMark[]; readonly outlines: PlacedMark[] },
): number {
  let [x, y] = [room.x, room.y];
  for (const mark of marks) {
    const slot = mark.first === undefined ? pitch : wideSlot;
    if (x > room.x && x + slot > room.x + room.width) [x, y] = [room.x, y + wideSlot];
    const at = placed(mark, x + slot / 2, y);
    drawn.marks.push(at);
    if (mark.first !== undefined)
      drawn.outlines.push({
        ...placed({ outcome: "failure", technique: mark.first }, at.x, y),
        size: ring[mark.first],
      });
    x += slot;
  }
  return y;
}
