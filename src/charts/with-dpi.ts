/**
 * A PNG that states its resolution: a pHYs chunk after the header chunk.
 * @param png bytes of a PNG without a pHYs chunk
 * @param dpi dots per inch
 * @see W3C Portable Network Graphics (Second Edition) 2003, 11.3.5.3 (pHYs) and Annex D (CRC)
 */
export function withDpi(png: Uint8Array, dpi: number): Uint8Array<ArrayBuffer> {
  const perMetre = Math.round(dpi / 0.0254);
  const chunk = new Uint8Array(21);
  const view = new DataView(chunk.buffer);
  view.setUint32(0, 9);
  chunk.set(new TextEncoder().encode("pHYs"), 4);
  view.setUint32(8, perMetre);
  view.setUint32(12, perMetre);
  chunk[16] = 1;
  view.setUint32(17, crc32(chunk.subarray(4, 17)));

  // Signature (8 bytes) and header chunk (25 bytes) come first.
  const out = new Uint8Array(png.length + chunk.length);
  out.set(png.subarray(0, 33));
  out.set(chunk, 33);
  out.set(png.subarray(33), 33 + chunk.length);
  return out;
}

function crc32(bytes: Uint8Array): number {
  let sum = 0xffffffff;
  for (const byte of bytes) {
    sum ^= byte;
    for (let bit = 0; bit < 8; bit++) sum = sum & 1 ? 0xedb88320 ^ (sum >>> 1) : sum >>> 1;
  }
  return (sum ^ 0xffffffff) >>> 0;
}
