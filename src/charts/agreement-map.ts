import { figureWidth, type Drawing } from "./drawing.js";
import { framed } from "./pixels.js";
import { boxLayer, pointLayer, ruleLayer, type PointRow, type RuleRow } from "./plot-frame.js";
import { textLayer, type TextRow } from "./text-layer.js";

export interface AgreementMapText {
  readonly first: string;
  readonly second: string;
  readonly grades: readonly string[];
}

const left = 74;
const top = 54;
const dot = 11;

/**
 * Grade by grade map of two readings: every radiograph a mark in its cell, filled where the grades are the same, a ring
 * where not, with the count; a cell too full for marks keeps its count and a tint.
 *
 * @param cells ids of the radiographs in each cell, rows by the first reading
 */
export function agreementMap(
  cells: readonly (readonly (readonly string[])[])[],
  text: AgreementMapText,
  options: { readonly width?: number } = {},
): Drawing {
  const { width = figureWidth } = options;
  const size = Math.min(112, Math.floor((width - left - 8) / cells.length));
  const extent = { width, height: top + size * cells.length + 10 };
  const at = (place: number): number => place * size;
  const frames: RuleRow[] = [];
  const same: RuleRow[] = [];
  const points: PointRow[] = [];
  const counts: TextRow[] = [];
  cells.forEach((row, i) =>
    row.forEach((ids, j) => {
      const [x, y] = [left + at(j), top + at(i)];
      frames.push(...edges(x, y, size));
      if (i === j) same.push({ x, y, x2: x + size, y2: y + size });
      if (ids.length > 0) counts.push({ x: x + 6, y: y + 13, text: String(ids.length) });
      points.push(...packed(ids, x, y, size, i === j));
    }),
  );
  const middle = (place: number): number => at(place) + size / 2;
  return {
    spec: framed(extent, [
      boxLayer("same", { ink: "closed", opacity: 0.1 }, extent),
      ruleLayer("frames", { ink: "line" }, extent),
      pointLayer("points", 46, extent),
      textLayer("counts", "count", "left", extent),
      textLayer("rowNames", "label", "right", extent),
      textLayer("columnNames", "label", "center", extent),
      textLayer("titles", "note", "left", extent),
    ]),
    rows: {
      same,
      frames,
      points,
      counts,
      rowNames: text.grades.map((name, i) => ({ x: left - 10, y: top + middle(i), text: name })),
      columnNames: text.grades.map((name, j) => ({ x: left + middle(j), y: top - 14, text: name })),
      titles: [
        { x: left, y: 12, text: `${text.second} across` },
        { x: 0, y: top - 14, text: `${text.first} ↓` },
      ],
    },
  };
}

function edges(x: number, y: number, size: number): RuleRow[] {
  const end = { x: x + size, y: y + size };
  return [
    { x, y, x2: end.x, y2: y },
    { x, y: end.y, x2: end.x, y2: end.y },
    { x, y, x2: x, y2: end.y },
    { x: end.x, y, x2: end.x, y2: end.y },
  ];
}

/** Marks in rows under the count; none when they do not fit. */
function packed(ids: readonly string[], x: number, y: number, size: number, same: boolean): PointRow[] {
  const across = Math.floor((size - 10) / dot);
  const down = Math.floor((size - 28) / dot);
  if (ids.length > across * down) return [];
  return ids.map((id, k) => ({
    x: x + 10 + dot * (k % across),
    y: y + 28 + dot * Math.floor(k / across),
    id,
    fill: same ? "closed" : "none",
    stroke: same ? "closed" : "open",
  }));
}
