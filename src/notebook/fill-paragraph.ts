import type { Paragraph, Span } from "../report/text.js";
import type { OpenCases } from "./case-dialog.js";
import { element } from "./element.js";

const numbers = new WeakMap<Node, Span>();

/**
 * Writes a paragraph into an element, numbers as controls that open their cases. Where the shape stays, the nodes stay
 * and only their text changes, so that a redraw takes no focus away.
 */
export function fillParagraph(into: HTMLElement, paragraph: Paragraph, open: OpenCases): void {
  const nodes = [...into.childNodes];
  const same =
    nodes.length === paragraph.length && nodes.every((node, i) => kindOf(node) === kindOfSpan(paragraph[i]!));
  if (!same) into.replaceChildren(...paragraph.map((span) => nodeOf(span, open)));
  for (const [i, span] of paragraph.entries()) {
    const node = into.childNodes[i]!;
    const text = typeof span === "string" ? span : span.text;
    if (node.textContent !== text) node.textContent = text;
    if (typeof span !== "string" && span.cases.length > 0)
      (node as Element).setAttribute("aria-label", `${text}, ${span.title}`);
    numbers.set(node, span);
  }
}

function kindOf(node: Node): string {
  return node.nodeType === Node.TEXT_NODE ? "words" : node.nodeName;
}

function kindOfSpan(span: Span): string {
  if (typeof span === "string") return "words";
  return span.cases.length === 0 ? "B" : "BUTTON";
}

function nodeOf(span: Span, open: OpenCases): Node {
  if (typeof span === "string") return document.createTextNode(span);
  if (span.cases.length === 0) return element("b", {}, span.text);
  const node = element("button", { type: "button", class: "count", "aria-haspopup": "dialog" }, span.text);
  node.addEventListener("click", () => {
    const held = numbers.get(node);
    if (held !== undefined && typeof held !== "string") open(held);
  });
  return node;
}
