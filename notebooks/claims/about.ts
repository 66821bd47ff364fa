import type { NotebookAbout } from "../notebook-links.js";

export const about: NotebookAbout = { name: "Reported claims", order: 4 };
