import type { NotebookAbout } from "../notebook-links.js";

export const about: NotebookAbout = { name: "Grading agreement", order: 3 };
