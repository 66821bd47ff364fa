import type { NotebookAbout } from "../notebook-links.js";

export const about: NotebookAbout = { name: "Published series", order: 3 };
