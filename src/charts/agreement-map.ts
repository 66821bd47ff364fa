import { figureWidth, type Drawing } from "./drawing.js";
import { framed } from "./pixels.js";
import { boxLayer, pointLayer, ruleLayer, type PointRow, type RuleRow } from "./plot-frame.js";
import { textLayer, type TextRow } from "./text-layer.js";
import { textWidth } from "./text-width.js";

export interface AgreementMapText {
  readonly first: string;
  readonly second: string;
  readonly grades: readonly string[];
}

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
  const named = (name: string, face: "sans" | "serifBold"): number => textWidth(name, face === "sans" ? 13 : 14, face);
  const names = [named(`${text.first} ↓`, "sans"), ...text.grades.map((name) => named(name, "serifBold"))];
  const left = 18 + Math.ceil(Math.min(0.3 * width, Math.max(...names)));
  const across = Math.min(180, Math.floor((width - left - 2) / cells.length));
  const size = { across, down: Math.min(96, across) };
  const extent = { width, height: top + size.down * cells.length + 10 };
  const frames: RuleRow[] = [];
  const same: RuleRow[] = [];
  const points: PointRow[] = [];
  const counts: TextRow[] = [];
  cells.forEach((row, i) =>
    row.forEach((ids, j) => {
      const [x, y] = [left + size.across * j, top + size.down * i];
      frames.push(...edges(x, y, size));
      if (i === j) same.push({ x, y, x2: x + size.across, y2: y + size.down });
      if (ids.length > 0) counts.push({ x: x + 6, y: y + 13, text: String(ids.length) });
      points.push(...packed(ids, x, y, size, i === j));
    }),
  );
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
      rowNames: text.grades.map((name, i) => ({ x: left - 10, y: top + size.down * (i + 0.5), text: name })),
      columnNames: text.grades.map((name, j) => ({ x: left + size.across * (j + 0.5), y: top - 14, text: name })),
      titles: [
        { x: left, y: 12, text: `${text.second} across` },
        { x: 0, y: top - 14, text: `${text.first} ↓` },
      ],
    },
  };
}

/** Width and height of a cell in pixels. */
interface CellSize {
  readonly across: number;
  readonly down: number;
}

function edges(x: number, y: number, size: CellSize): RuleRow[] {
  const end = { x: x + size.across, y: y + size.down };
  return [
    { x, y, x2: end.x, y2: y },
    { x, y: end.y, x2: end.x, y2: end.y },
    { x, y, x2: x, y2: end.y },
    { x: end.x, y, x2: end.x, y2: end.y },
  ];
}

/** Marks in rows under the count; none when they do not fit. */
function packed(ids: readonly string[], x: number, y: number, size: CellSize, same: boolean): PointRow[] {
  const across = Math.floor((size.across - 10) / dot);
  const down = Math.floor((size.down - 24) / dot);
  if (ids.length > across * down) return [];
  return ids.map((id, k) => ({
    x: x + 10 + dot * (k % across),
    y: y + 28 + dot * Math.floor(k / across),
    id,
    fill: same ? "closed" : "none",
    stroke: same ? "closed" : "open",
  }));
}
