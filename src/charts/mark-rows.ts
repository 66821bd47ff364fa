import { axisRoom } from "./axis-title.js";
import { bandsLayer, type BandAxis, type BandRow } from "./bands-layer.js";
import { mostMarks, pitch, placed, type CaseMark, type MarkTechnique, type PlacedMark } from "./case-mark.js";
import { columnsOf, type Columns, type RowText } from "./columns-of.js";
import { barsLayer, countedBar, type BarRow } from "./counted-bar.js";
import { figureWidth, type Drawing } from "./drawing.js";
import { crossesLayer, marksLayer } from "./marks-layer.js";
import { framed, type Extent } from "./pixels.js";
import { textLayer, type TextRow } from "./text-layer.js";
import { textWidth } from "./text-width.js";

/** A row of the picture: groups of cases, and under them at most one estimate with its bands. */
export interface MarkRow extends RowText {
  readonly groups: readonly (readonly CaseMark[])[];
  readonly band: Omit<BandRow, "y"> | null;
  /** The first of several that belong together: more room above it. */
  readonly apart?: boolean;
}

export interface MarkRowsOptions {
  /** Width of the whole picture in pixels; default that of a saved figure. */
  readonly width?: number;
  /** The axis under the rows, when there are bands. */
  readonly axis?: Omit<BandAxis, "from" | "to">;
  /** Groups stand behind one another on one line, not under one another. */
  readonly inline?: boolean;
  /** Explains the shapes, above the rows. */
  readonly key?: readonly { readonly technique: MarkTechnique; readonly text: string }[];
}

const line = 14;
const labelLine = 17;
const groupGap = 14;

const isBare = ({ groups, band }: MarkRow): boolean => band === null && groups.every((group) => group.length === 0);

/** Rows of marks over bands: what every picture of cases is made of. */
export function markRows(rows: readonly MarkRow[], options: MarkRowsOptions = {}): Drawing {
  const { width = figureWidth, axis, inline = false, key = [] } = options;
  const columns = columnsOf(
    rows.map((row) => ({ ...row, bare: isBare(row) })),
    width,
  );
  const largest = Math.max(1, ...rows.flatMap((row) => row.groups.map((group) => group.length)));
  const drawn = new Rows(columns, (columns.to - columns.from) / largest, inline);
  let top = drawn.key(key, 14, width);
  for (const [i, row] of rows.entries()) {
    const start = row.apart && i > 0 ? top + groupGap : top;
    top = drawn.row(row, columns.labels[i]!, start, axis !== undefined);
  }

  const extent = { width, height: top - (axis ? 16 : 12), below: axis ? axisRoom(axis.title, columns) : 0 };
  const { from, to } = columns;
  const { bands, ...rest } = drawn.all;
  return {
    spec: framed(extent, [
      ...(axis ? [bandsLayer("bands", { ...axis, from, to }, extent)] : []),
      { layer: rowLayers(columns, extent) },
    ]),
    rows: axis ? { ...rest, bands } : rest,
  };
}

function rowLayers({ wide }: Columns, extent: Extent) {
  const side = wide ? "left" : "right";
  return [
    barsLayer("bars", extent),
    marksLayer("marks", extent),
    crossesLayer("crosses", extent),
    textLayer("labels", "label", wide ? "right" : "left", extent),
    textLayer("counts", "count", side, extent),
    textLayer("notes", "note", side, extent),
    textLayer("keys", "note", "left", extent),
  ];
}

/** Collects what is drawn, from the top down; each method returns the height at which the next thing may start. */
class Rows {
  readonly all = {
    marks: [] as PlacedMark[],
    crosses: [] as PlacedMark[],
    bars: [] as BarRow[],
    bands: [] as BandRow[],
    labels: [] as TextRow[],
    counts: [] as TextRow[],
    notes: [] as TextRow[],
    keys: [] as TextRow[],
  };
  readonly #columns: Columns;
  readonly #perCase: number;
  readonly #inline: boolean;

  constructor(columns: Columns, perCase: number, inline: boolean) {
    this.#columns = columns;
    this.#perCase = perCase;
    this.#inline = inline;
  }

  key(entries: NonNullable<MarkRowsOptions["key"]>, top: number, width: number): number {
    const start = this.#columns.wide ? this.#columns.from : 6;
    let [x, y] = [start, top];
    for (const { technique, text } of entries) {
      const wide = 26 + textWidth(text, 13);
      if (x > start && x + wide > width) [x, y] = [start, y + 20];
      this.all.marks.push(placed({ outcome: "success", technique }, x + 5, y));
      this.all.keys.push({ x: x + 16, y, text });
      x += wide + 14;
    }
    return entries.length === 0 ? top : y + 30;
  }

  row(row: MarkRow, labels: readonly string[], start: number, banded: boolean): number {
    return this.#columns.wide ? this.#wideRow(row, labels, start, banded) : this.#narrowRow(row, labels, start, banded);
  }

  /** Label on the left, text on the right, both level with the middle of what is drawn. */
  #wideRow(row: MarkRow, labels: readonly string[], start: number, banded: boolean): number {
    const { labelRight, textLeft, from } = this.#columns;
    const tall = labelLine * (labels.length - 1);
    // A label of three lines and more begins level with the marks, not in the row above.
    const top = start + Math.max(0, tall - labelLine) / 2;
    const under = this.#groups(row.groups, top);
    const marked = under > top;
    const band = marked ? under + 7 : top + 10;
    if (row.band) this.all.bands.push({ y: band, ...row.band });
    const middle = marked ? (top + (banded ? band : under - 10)) / 2 : banded ? band : top;
    const first = middle - tall / 2;
    this.all.labels.push(...labels.map((text, i) => ({ x: labelRight, y: first + labelLine * i, text })));
    const x = isBare(row) ? from : textLeft;
    const both = row.count !== "" && row.note !== "";
    this.all.counts.push({ x, y: both ? middle - 9 : middle, text: row.count });
    this.all.notes.push({ x, y: both ? middle + 10 : marked ? band : middle, text: row.note });
    return Math.max(banded ? band + 33 : under + 12, both ? middle + 40 : 0, first + tall + 28);
  }

  /** Label and count above the marks, the note under them. */
  #narrowRow(row: MarkRow, labels: readonly string[], start: number, banded: boolean): number {
    const { textLeft } = this.#columns;
    const under = this.#groups(row.groups, start + labelLine * labels.length);
    // Where nothing is drawn the note follows the label.
    const band = isBare(row) ? under - (banded ? 22 : 3) : under + 7;
    if (row.band) this.all.bands.push({ y: band, ...row.band });
    this.all.labels.push(...labels.map((text, i) => ({ x: 2, y: start - 3 + labelLine * i, text })));
    this.all.counts.push({ x: textLeft, y: start - 3, text: row.count });
    this.all.notes.push({ x: textLeft, y: band + (banded ? 19 : 0), text: row.note });
    return (banded ? band + 33 : under + 12) + (row.note === "" ? 6 : banded ? 18 : 26);
  }

  #groups(groups: readonly (readonly CaseMark[])[], top: number): number {
    const { from, to } = this.#columns;
    const perLine = Math.max(1, Math.floor((to - from) / pitch) + 1);
    let [slot, y] = [0, top];
    for (const marks of groups) {
      if (slot > 0 && !this.#inline) [slot, y] = [0, y + line];
      if (marks.length > mostMarks) {
        const successes = marks.filter((mark) => mark.outcome === "success").length;
        const place = { from, y, perCase: this.#perCase, technique: marks[0]!.technique };
        this.all.bars.push(...countedBar(successes, marks.length, place));
        slot = perLine;
      }
      for (const mark of marks.length > mostMarks ? [] : marks) {
        if (slot >= perLine) [slot, y] = [0, y + line];
        const at = placed(mark, from + 5 + pitch * slot, y);
        this.all.marks.push(at);
        if (mark.crossed) this.all.crosses.push(at);
        slot++;
      }
      if (this.#inline && marks.length > 0 && slot > 0) slot++;
    }
    return groups.some((marks) => marks.length > 0) ? y + line : top;
  }
}
