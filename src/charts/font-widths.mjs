// Writes font-widths.json: advance widths of the DejaVu faces used in figures, in thousandths of the font size.
// Run after a change of the font package: node src/charts/font-widths.mjs
import { readFileSync, writeFileSync } from "node:fs";
import { createRequire } from "node:module";

const require = createRequire(import.meta.url);
const faces = { sans: "DejaVuSans", sansBold: "DejaVuSans-Bold", serifBold: "DejaVuSerif-Bold" };
// Latin with its accents, Greek, punctuation, arrows and signs of arithmetic.
const ranges = [
  [0x20, 0x17f],
  [0x370, 0x3ff],
  [0x2010, 0x2044],
  [0x2190, 0x2199],
  [0x2200, 0x2265],
];

const table = { ranges: ranges.map(([from]) => from), faces: {} };
for (const [name, file] of Object.entries(faces)) {
  const widthOf = reader(readFileSync(require.resolve(`dejavu-fonts-ttf/ttf/${file}.ttf`)));
  table.faces[name] = ranges.map(([from, to]) => Array.from({ length: to - from + 1 }, (_, i) => widthOf(from + i)));
}
writeFileSync(new URL("font-widths.json", import.meta.url), `${JSON.stringify(table)}\n`);

/** Width of a character by the tables head, hhea, hmtx and cmap (format 4) of an OpenType font. */
function reader(font) {
  const tables = {};
  for (let i = 0; i < font.readUInt16BE(4); i++)
    tables[font.toString("latin1", 12 + 16 * i, 16 + 16 * i)] = font.readUInt32BE(12 + 16 * i + 8);
  const unitsPerEm = font.readUInt16BE(tables.head + 18);
  const measured = font.readUInt16BE(tables.hhea + 34);
  const glyphOf = characterMap(font, tables.cmap);
  return (code) => {
    const glyph = Math.min(glyphOf(code), measured - 1);
    return Math.round((1000 * font.readUInt16BE(tables.hmtx + 4 * glyph)) / unitsPerEm);
  };
}

function characterMap(font, cmap) {
  let at;
  for (let i = 0; i < font.readUInt16BE(cmap + 2); i++) {
    const start = cmap + font.readUInt32BE(cmap + 4 + 8 * i + 4);
    if (font.readUInt16BE(start) === 4) at = start;
  }
  const segments = font.readUInt16BE(at + 6) / 2;
  const [ends, starts, deltas, offsets] = [14, 16 + 2 * segments, 16 + 4 * segments, 16 + 6 * segments];
  return (code) => {
    for (let i = 0; i < segments; i++) {
      if (font.readUInt16BE(at + ends + 2 * i) < code) continue;
      const start = font.readUInt16BE(at + starts + 2 * i);
      if (start > code) return 0;
      const delta = font.readUInt16BE(at + deltas + 2 * i);
      const offset = font.readUInt16BE(at + offsets + 2 * i);
      if (offset === 0) return (code + delta) % 65536;
      const glyph = font.readUInt16BE(at + offsets + 2 * i + offset + 2 * (code - start));
      return glyph === 0 ? 0 : (glyph + delta) % 65536;
    }
    return 0;
  };
}
