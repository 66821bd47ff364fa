import { basename } from "node:path";
import { InputError } from "./input-error.js";

/**
 * Plain text of a file: UTF-8 or UTF-16 with a mark, otherwise UTF-8, otherwise Windows-1252.
 * @throws InputError naming the file when it is empty or no text
 */
export function decodeText(bytes: Uint8Array, path: string): string {
  const name = path === "-" ? "standard input" : basename(path);
  const text = decode(bytes);
  if (text.includes("\0"))
    throw new InputError(`${name}: is no text file (it holds zero bytes); paste the text, or save it as plain text`);
  if (text.trim() === "") throw new InputError(`${name}: holds no text`);
  return text;
}

function decode(bytes: Uint8Array): string {
  if (bytes[0] === 0xff && bytes[1] === 0xfe) return new TextDecoder("utf-16le").decode(bytes);
  if (bytes[0] === 0xfe && bytes[1] === 0xff) return new TextDecoder("utf-16be").decode(bytes);
  try {
    return new TextDecoder("utf-8", { fatal: true }).decode(bytes);
  } catch {
    // One-shot decoding of this code page loses the characters from 0x80 to 0x9f in Node 20; streaming keeps them.
    return new TextDecoder("windows-1252").decode(bytes, { stream: true });
  }
}
