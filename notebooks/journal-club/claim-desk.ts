import type { CheckedText } from "../../src/claims/check-text.js";
import { element } from "../../src/notebook/element.js";
import type { Notebook } from "../../src/notebook/notebook.js";
import { claimSum } from "../claims/claim-sum.js";
import { markedText } from "../claims/marked-text.js";
import type { JournalClub } from "./journal-club.js";

/** Where the paper's text is pasted, and its sentences with a light at every number. */
export function claimDesk(notebook: Notebook<JournalClub>) {
  const [marked, sum] = [element("div"), element("div", { "aria-live": "polite" })];
  const pasted = element("textarea", { id: "abstract", rows: 8, spellcheck: "false" });
  let waiting: ReturnType<typeof setTimeout> | undefined;
  pasted.addEventListener("input", () => {
    clearTimeout(waiting);
    waiting = setTimeout(() => notebook.set("text", pasted.value), 250);
  });
  const hint = "The abstract or a table of the paper. It stays on this computer.";
  const show = (text: string, checked: CheckedText | null): void => {
    if (document.activeElement !== pasted) pasted.value = text;
    const open = (place: number): void => sum.replaceChildren(claimSum(checked!.claims[place]!));
    marked.replaceChildren(...(checked === null ? [] : [markedText(text, checked, open)]));
    sum.replaceChildren();
  };
  notebook.observe("claims", {
    fulfilled: ({ text, checked }) => show(text, checked),
    rejected: (message) => marked.replaceChildren(element("p", { class: "error" }, message)),
  });
  return {
    /** The text with its lights, and the sum of the number that was chosen. */
    marked: element("div", { class: "claim-desk" }, marked, sum),
    paste: element(
      "details",
      { class: "claim-desk" },
      element("summary", {}, "Paste the text"),
      element("label", { for: "abstract" }, hint),
      pasted,
    ),
  };
}
