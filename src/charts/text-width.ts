import widths from "./font-widths.json" with { type: "json" };

/** The faces that figures are set in; files name them, so that text has the same width in Node and in a browser. */
export type Face = keyof typeof widths.faces;

/** Width of a character that the table lacks: that of a wide letter, so that nothing is drawn over. */
const unknown = 800;

/**
 * Width of one line of text in pixels.
 * @param size font size in pixels
 */
export function textWidth(text: string, size: number, face: Face = "sans"): number {
  let thousandths = 0;
  for (const character of text) thousandths += widthOf(character.codePointAt(0)!, face);
  return (thousandths * size) / 1000;
}

function widthOf(code: number, face: Face): number {
  for (const [i, from] of widths.ranges.entries()) {
    const width = code >= from ? widths.faces[face][i]![code - from] : undefined;
    if (width !== undefined) return width;
  }
  return unknown;
}
