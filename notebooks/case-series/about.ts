import type { NotebookAbout } from "../notebook-links.js";

export const about: NotebookAbout = { name: "Case series", order: 1 };
