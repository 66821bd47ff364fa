import type { Tipping } from "../findings/tipping.js";
import { excludesZero } from "../report/tipping-text.js";
import { placed, type PlacedMark } from "./case-mark.js";
import { figureWidth, type Drawing } from "./drawing.js";
import { marksLayer } from "./marks-layer.js";
import { framed } from "./pixels.js";
import { textLayer, type TextRow } from "./text-layer.js";

const widest = 34;
const top = 52;
const left = 44;

/**
 * Every outcome of the missing cases a mark: a circle where the first technique is ahead, a square where the second is, a
 * diamond where they are equal; filled where the interval of the difference excludes 0.
 */
export function tippingMarks({ first, second, cells }: Tipping, options: { readonly width?: number } = {}): Drawing {
  const { width = figureWidth } = options;
  const step = Math.min(widest, Math.floor((width - left - 12) / (second.lost + 1)));
  const extent = { width, height: top + step * cells.length + 12 };
  const x = (column: number): number => left + step * (column + 0.5);
  const y = (row: number): number => top + step * (row + 0.5);
  const marks = cells.flatMap((row, i) =>
    row.map((cell, j): PlacedMark => {
      const technique = cell.difference > 0 ? "closed" : cell.difference < 0 ? "open" : "assisted";
      return placed({ outcome: excludesZero(cell) ? "success" : "failure", technique }, x(j), y(i));
    }),
  );
  const ticks = (last: number): number[] =>
    last <= 9 ? Array.from({ length: last + 1 }, (_, n) => n) : [0, Math.round(last / 2), last];
  const across: TextRow[] = ticks(second.lost).map((n) => ({ x: x(n), y: top - 8, text: String(n) }));
  const down: TextRow[] = ticks(first.lost).map((n) => ({ x: left - 8, y: y(n), text: String(n) }));
  return {
    spec: framed(extent, [
      marksLayer("marks", extent),
      textLayer("across", "note", "center", extent),
      textLayer("down", "note", "right", extent),
      textLayer("titles", "note", "left", extent),
    ]),
    rows: {
      marks,
      across,
      down,
      titles: [
        { x: 0, y: 10, text: `${second.name}, missing and failed, across` },
        { x: 0, y: 27, text: `${first.name}, missing and failed ↓` },
      ],
    },
  };
}
