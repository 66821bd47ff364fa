import { mkdir, mkdtemp, rename, rm, writeFile } from "node:fs/promises";
import { basename, dirname, join, resolve } from "node:path";
import { InputError } from "./input-error.js";

/**
 * Writes all files of a folder or none: they are written beside it first and moved in only when all are there.
 * @param files contents by path inside the folder, with forward slashes
 * @throws InputError when the folder cannot be written
 */
export async function writeWhole(folder: string, files: ReadonlyMap<string, string | Uint8Array>): Promise<void> {
  const target = resolve(folder);
  let draft: string | undefined;
  try {
    await mkdir(dirname(target), { recursive: true });
    draft = await mkdtemp(join(dirname(target), `.${basename(target)}-`));
    for (const [path, content] of files) {
      await mkdir(dirname(join(draft, path)), { recursive: true });
      await writeFile(join(draft, path), content);
    }
    for (const path of files.keys()) {
      await mkdir(dirname(join(target, path)), { recursive: true });
      await rename(join(draft, path), join(target, path));
    }
  } catch (error) {
    throw new InputError(`--out ${folder}: cannot be written (${(error as Error).message.replace(/'.*?'/g, "…")})`);
  } finally {
    if (draft !== undefined) await rm(draft, { recursive: true, force: true });
  }
}
