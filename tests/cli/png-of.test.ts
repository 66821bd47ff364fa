import { expect, it } from "vitest";
import { pngOf } from "../../src/cli/png-of.js";

const svg = (body: string): string =>
  `<svg xmlns="http://www.w3.org/2000/svg" width="96" height="48" viewBox="0 0 96 48"><rect width="96" height="48" fill="#fff"/>${body}</svg>`;

it("is 300 dots to the inch and says so", async () => {
  const png = Buffer.from(await pngOf(svg("")));
  expect(png.toString("latin1", 1, 4)).toBe("PNG");
  expect([png.readUInt32BE(16), png.readUInt32BE(20)]).toEqual([300, 150]);
  const at = png.indexOf("pHYs");
  // 300 / 0.0254 = 11811.02 pixels a metre.
  expect([png.readUInt32BE(at + 4), png.readUInt32BE(at + 8), png[at + 12]]).toEqual([11811, 11811, 1]);
  // Python: zlib.crc32(b"pHYs" + struct.pack(">IIB", 11811, 11811, 1))
  expect(png.readUInt32BE(at + 13)).toBe(0x78a53f76);
});

it("draws text with its own fonts and gives the same bytes again", async () => {
  const text = svg('<text x="4" y="20" font-family="DejaVu Serif, serif" font-weight="700" font-size="12">IV</text>');
  const png = await pngOf(text);
  expect(png.length).toBeGreaterThan((await pngOf(svg(""))).length);
  expect(await pngOf(text)).toEqual(png);
});
