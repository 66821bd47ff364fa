import { wrapText } from "./wrap-text.js";

/** Ends of an axis in pixels. */
interface Ends {
  readonly from: number;
  readonly to: number;
}

/** Title of the axis under a picture, broken into lines little longer than the axis. */
export function axisTitle(title: string | undefined, { from, to }: Ends): string[] {
  return title === undefined ? [] : wrapText(title, to - from + 26, 12);
}

/** Room under a picture for the numbers of its axis and the title. */
export function axisRoom(title: string | undefined, ends: Ends): number {
  const lines = axisTitle(title, ends).length;
  return lines === 0 ? 26 : 29 + 15 * lines;
}
