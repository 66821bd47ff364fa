import type { NotebookLink } from "../src/notebook/page-shell.js";

/** What the navigation says of a notebook; each folder's `about.ts` exports one. */
export interface NotebookAbout {
  readonly name: string;
  /** Place in the navigation, small first. */
  readonly order: number;
}

const abouts = import.meta.glob<{ about: NotebookAbout }>("./*/about.ts", { eager: true });

/** Links to all notebooks there are, for the page of the one in `folder`. */
export function notebookLinks(folder: string): NotebookLink[] {
  return Object.entries(abouts)
    .map(([path, { about }]) => ({ ...about, folder: path.split("/")[1]! }))
    .toSorted((a, b) => a.order - b.order)
    .map((one) => ({ name: one.name, address: addressOf(one.folder), current: one.folder === folder }));
}

function addressOf(folder: string): string {
  return import.meta.env["SINGLE"] ? `./${folder}.html` : `../${folder}/index.html`;
}
