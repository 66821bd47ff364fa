import { checkText, type CheckedText } from "../../src/claims/check-text.js";
import { type Review, reviewComments } from "../../src/claims/review-comments.js";
import { cellsOf } from "../../src/notebook/cells.js";

/** Every cell of the notebook; the first is set by the reader. */
export interface Claims {
  /** The pasted text; blank while there is none. */
  text: string;
  /** Null while the text is blank. */
  checked: CheckedText | null;
  review: Review | null;
}

const cell = cellsOf<Claims>();

/** The notebook, starting from a text. */
export const claims = (text: string) => [
  cell("text", [], () => text),
  cell("checked", ["text"], (pasted) => (pasted.trim() === "" ? null : checkText(pasted))),
  cell("review", ["checked"], (checked) => (checked === null ? null : reviewComments(checked))),
];
