import { readFile } from "node:fs/promises";
import { basename } from "node:path";
import { InputError } from "./input-error.js";

/**
 * Bytes of a file, or of standard input for "-".
 * @throws InputError naming the file when it cannot be read
 */
export async function readInput(path: string): Promise<Uint8Array<ArrayBuffer>> {
  try {
    return new Uint8Array(path === "-" ? await standardInput() : await readFile(path));
  } catch (error) {
    const reasons: Record<string, string> = {
      ENOENT: "no such file",
      EISDIR: "is a folder, not a file",
      EACCES: "may not be read",
    };
    throw new InputError(
      `${basename(path)}: ${reasons[(error as NodeJS.ErrnoException).code ?? ""] ?? (error as Error).message}`,
    );
  }
}

async function standardInput(): Promise<Buffer> {
  const parts: Buffer[] = [];
  for await (const part of process.stdin) parts.push(part as Buffer);
  return Buffer.concat(parts);
}
