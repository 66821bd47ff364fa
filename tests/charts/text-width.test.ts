import { createRequire } from "node:module";
import { Resvg } from "@resvg/resvg-js";
import { expect, it } from "vitest";
import { textWidth } from "../../src/charts/text-width.js";
import { wrapText } from "../../src/charts/wrap-text.js";

const require = createRequire(import.meta.url);
const font = (face: string): string => require.resolve(`dejavu-fonts-ttf/ttf/${face}.ttf`);

/** Advance width by the renderer's own reading of the font: how much wider two are than one. */
function advance(character: string, face: string, family: string, weight: number): number {
  const inked = (text: string): number => {
    const svg = `<svg xmlns="http://www.w3.org/2000/svg" width="9000" height="2000"><text y="1500" font-family="${family}" font-weight="${weight}" font-size="1000">${text}</text></svg>`;
    return new Resvg(svg, { font: { loadSystemFonts: false, fontFiles: [font(face)] } }).getBBox()!.width;
  };
  return inked(character + character) - inked(character);
}

it.each([
  ["sans", "DejaVuSans", "DejaVu Sans", 400],
  ["sansBold", "DejaVuSans-Bold", "DejaVu Sans", 700],
  ["serifBold", "DejaVuSerif-Bold", "DejaVu Serif", 700],
] as const)("agrees with the renderer of the files: %s", (name, face, family, weight) => {
  for (const character of ["I", "V", "i", "W", "0", "%", "ä", "ł", "β", "≥", "→", "\u2212"])
    expect(
      Math.abs(textWidth(character, 1000, name) - advance(character, face, family, weight)),
      character,
    ).toBeLessThan(2);
});

it("adds up over a text and grows with the size", () => {
  expect(textWidth("iii", 10)).toBeCloseTo(3 * textWidth("i", 10), 10);
  expect(textWidth("52 of 64", 26, "sansBold")).toBeCloseTo(2 * textWidth("52 of 64", 13, "sansBold"), 10);
});

it("gives room to characters that the table lacks", () => {
  expect(textWidth("\u{1F9B4}", 10)).toBe(8);
});

it("breaks at spaces, loses no word, and keeps a long word whole", () => {
  const text = "Associated injury of the ipsilateral elbow, seen late";
  const lines = wrapText(text, 120, 14, "serifBold");
  expect(lines.join(" ")).toBe(text);
  for (const line of lines) expect(textWidth(line, 14, "serifBold")).toBeLessThanOrEqual(120);
  expect(wrapText("Donaudampfschifffahrt x", 20, 14)).toEqual(["Donaudampfschifffahrt", "x"]);
});
