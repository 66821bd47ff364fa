import type { NotebookAbout } from "../notebook-links.js";

export const about: NotebookAbout = { name: "Journal club", order: 4 };
