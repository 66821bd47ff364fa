/**
 * Decodes a text file: byte-order mark, else UTF-16 by its zero bytes, else strict UTF-8, else Windows-1252.
 * @returns the text without its mark, and the encoding by name
 */
export function decodeText(bytes: Uint8Array): { readonly text: string; readonly encoding: string } {
  const encoding = markOf(bytes) ?? sixteenBit(bytes) ?? (isUtf8(bytes) ? "utf-8" : "windows-1252");
  const decoder = new TextDecoder(encoding);
  // Node 20 takes windows-1252 for latin1 in one go and loses the euro sign and curly quotes; a stream is decoded rightly.
  const text = decoder.decode(bytes, { stream: true }) + decoder.decode();
  return { text: text.replace(/^\ufeff/, ""), encoding };
}

function markOf(bytes: Uint8Array): string | undefined {
  if (bytes[0] === 0xef && bytes[1] === 0xbb && bytes[2] === 0xbf) return "utf-8";
  if (bytes[0] === 0xff && bytes[1] === 0xfe) return "utf-16le";
  if (bytes[0] === 0xfe && bytes[1] === 0xff) return "utf-16be";
  return undefined;
}

/** Latin text in UTF-16 has a zero in every other byte. */
function sixteenBit(bytes: Uint8Array): string | undefined {
  const length = Math.min(bytes.length & ~1, 2000);
  if (length < 4) return undefined;
  const zeros = [0, 0];
  for (let i = 0; i < length; i++) if (bytes[i] === 0) zeros[i & 1]!++;
  if (zeros[1]! > length * 0.3 && zeros[0] === 0) return "utf-16le";
  if (zeros[0]! > length * 0.3 && zeros[1] === 0) return "utf-16be";
  return undefined;
}

function isUtf8(bytes: Uint8Array): boolean {
  try {
    new TextDecoder("utf-8", { fatal: true }).decode(bytes);
    return true;
  } catch {
    return false;
  }
}
