import type { Claim } from "../../src/claims/claim.js";
import { element } from "../../src/notebook/element.js";
import { signs } from "./marked-text.js";

/** One claim opened: three lights by shape and word, the sum, the methods that reproduce it, what would change it. */
export function claimSum(claim: Claim): HTMLElement {
  const lights = (["arithmetic", "unit", "conclusion"] as const).map((name) => {
    const light = claim[name];
    const shape = element("span", { class: "sign", "aria-hidden": "true" }, signs[light]);
    return element("li", { class: light === "cannot be checked" ? "unsure" : light }, shape, `${name}: ${light}`);
  });
  const node = element(
    "div",
    { class: "sum" },
    element("p", { class: "quote" }, `“${claim.text}”`),
    element("ul", { class: "lights" }, ...lights),
    element("p", {}, claim.because || "Nothing printed lets this be recomputed."),
  );
  if (claim.reproducedBy.length > 0) node.append(element("p", {}, `Reproduced by: ${claim.reproducedBy.join("; ")}.`));
  if (claim.wouldChange.length > 0)
    node.append(
      element("p", {}, "What would change it:"),
      element("ul", {}, ...claim.wouldChange.map((line) => element("li", {}, line))),
    );
  return node;
}
