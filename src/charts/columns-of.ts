import { fontSizeOf } from "./text-layer.js";
import { textWidth } from "./text-width.js";
import { wrapText } from "./wrap-text.js";

/** What a row says beside its picture. */
export interface RowText {
  readonly label: string;
  /** "12 of 12" */
  readonly count: string;
  /** "100% (76 to 100)" */
  readonly note: string;
  /** Nothing is drawn: where the picture is wide, the text stands in the place of the marks. */
  readonly bare?: boolean;
}

/** Where label, picture and text of the rows stand, in pixels. A narrow picture has label and text above each row. */
export interface Columns {
  readonly wide: boolean;
  readonly labelRight: number;
  readonly from: number;
  readonly to: number;
  readonly textLeft: number;
  /** Label of each row, broken into lines. */
  readonly labels: readonly (readonly string[])[];
}

const gap = 20;
const narrowest = 480;

/** Columns of a picture of rows, by the widest of their texts. */
export function columnsOf(rows: readonly RowText[], width: number): Columns {
  const label = (text: string): number => textWidth(text, fontSizeOf("label"), "serifBold");
  const widest = (of: (row: RowText) => number, among = rows): number => Math.ceil(Math.max(0, ...among.map(of)));
  const texts = widest(
    (row) => Math.max(textWidth(row.count, fontSizeOf("count"), "sansBold"), textWidth(row.note, fontSizeOf("note"))),
    rows.filter((row) => !row.bare),
  );
  if (width < narrowest) {
    const room = (row: RowText): number => width - 18 - textWidth(row.count, fontSizeOf("count"), "sansBold");
    const labels = rows.map((row) => wrapText(row.label, room(row), fontSizeOf("label"), "serifBold"));
    return { wide: false, labelRight: 0, from: 14, to: width - 22, textLeft: width - 4, labels };
  }
  const most = Math.min(
    Math.max(
      28,
      widest((row) => label(row.label)),
    ),
    0.26 * width,
  );
  const labels = rows.map((row) => wrapText(row.label, most, fontSizeOf("label"), "serifBold"));
  const column = Math.ceil(Math.max(28, ...labels.flat().map(label)));
  const textLeft = width - texts - 4;
  return { wide: true, labelRight: column + 4, from: column + 4 + gap, to: textLeft - gap - 4, textLeft, labels };
}
