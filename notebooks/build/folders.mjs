import { existsSync, readdirSync } from "node:fs";
import { fileURLToPath } from "node:url";

/** Folder of the notebooks, with a separator at its end. */
export const notebooksRoot = fileURLToPath(new URL("../", import.meta.url));

/** Names of the folders that hold a notebook with a page. */
export const notebookFolders = () =>
  readdirSync(notebooksRoot).filter((name) => existsSync(`${notebooksRoot}${name}/index.html`));
