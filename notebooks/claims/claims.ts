import { checkText, type CheckedText } from "../../src/claims/check-text.js";
import { type Review, reviewComments } from "../../src/claims/review-comments.js";
import { cellsOf } from "../../src/notebook/cells.js";

/** Every cell of the notebook; the first two are set by the reader. */
export interface Claims {
  /** The pasted text; blank while there is none. */
  text: string;
  /** Whether remarks on wording are wanted. */
  style: boolean;
  /** Null while the text is blank. */
  checked: CheckedText | null;
  review: Review | null;
}

const cell = cellsOf<Claims>();

/** The notebook, starting from a text. */
export const claims = (text: string) => [
  cell("text", [], () => text),
  cell("style", [], () => false),
  cell("checked", ["text", "style"], (pasted, style) => (pasted.trim() === "" ? null : checkText(pasted, { style }))),
  cell("review", ["checked"], (checked) => (checked === null ? null : reviewComments(checked))),
];
