import type { CheckedText } from "../../src/claims/check-text.js";
import type { Claim, Light } from "../../src/claims/claim.js";
import { overall } from "../../src/claims/review-comments.js";
import { button, element } from "../../src/notebook/element.js";

export const signs: Readonly<Record<Light, string>> = { holds: "✓", fails: "✗", "cannot be checked": "?" };

/** The pasted text with every claim as a button that shows its sum; text stays text. */
export function markedText(text: string, { claims }: CheckedText, open: (claim: number) => void): HTMLElement {
  const node = element("div", { class: "marked" });
  let at = 0;
  claims.forEach((claim, i) => {
    const start = Math.max(at, claim.start);
    // Claims may share words ("93% v 69%"): each shows its own up to where the next begins.
    const next = claims[i + 1]?.start ?? text.length;
    const end = Math.max(start, next > claim.start ? Math.min(claim.end, next) : start);
    node.append(
      text.slice(at, start),
      markOf(claim, text.slice(start, end), () => open(i)),
    );
    at = end;
  });
  node.append(text.slice(at));
  return node;
}

function markOf(claim: Claim, shown: string, act: () => void): HTMLElement {
  const light = overall(claim);
  const mark = button("", act, `${light}: ${claim.text}`);
  mark.className = `claim ${light === "cannot be checked" ? "unsure" : light}`;
  mark.append(element("span", { class: "sign", "aria-hidden": "true" }, signs[light]), shown);
  return mark;
}
