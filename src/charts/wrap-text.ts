import { textWidth, type Face } from "./text-width.js";

/** Breaks text at spaces into lines no wider than `width` pixels; a longer word keeps a line of its own. */
export function wrapText(text: string, width: number, size: number, face: Face = "sans"): string[] {
  const lines: string[] = [];
  for (const word of text.split(/\s+/).filter(Boolean)) {
    const longer = lines.length > 0 ? `${lines.at(-1)} ${word}` : word;
    if (lines.length > 0 && textWidth(longer, size, face) <= width) lines[lines.length - 1] = longer;
    else lines.push(word);
  }
  return lines;
}
