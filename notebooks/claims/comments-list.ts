import { type Review, weights } from "../../src/claims/review-comments.js";
import { element } from "../../src/notebook/element.js";
import { choice } from "../../src/notebook/controls.js";

/** Numbered comments that can be edited and weighed, then what was verified. `words` is all of it as plain text. */
export function commentsList(review: Review): { readonly node: HTMLElement; readonly words: () => string } {
  const rows = review.comments.map((comment, i) => {
    const id = `comment-${i + 1}`;
    const area = element("textarea", { id, rows: 4 }, comment.text);
    let weight: string = comment.weight;
    const options = weights.map((value) => ({ value, text: value }));
    const select = choice(`Weight of comment ${i + 1}`, options, weight, (value) => (weight = value), {
      id: `${id}-weight`,
      hidden: true,
    });
    const head = element("div", { class: "bar" }, element("label", { for: id }, `Comment ${i + 1}`), select);
    return { node: element("li", {}, head, area), words: () => `${i + 1}. (${weight}) ${area.value.trim()}` };
  });
  const verified = review.verified.map((line) => element("li", {}, line));
  const node = element(
    "div",
    {},
    element("p", {}, review.opening),
    rows.length > 0
      ? element("ol", { class: "comments" }, ...rows.map((row) => row.node))
      : element("p", {}, "Nothing to ask about."),
    element(
      "details",
      {},
      element("summary", {}, `Verified: ${review.verified.length}`),
      element("ul", {}, ...verified),
    ),
  );
  const words = (): string =>
    [
      review.opening,
      ...rows.map((row) => row.words()),
      ...(review.verified.length > 0 ? [`Verified:\n${review.verified.map((line) => `- ${line}`).join("\n")}`] : []),
    ].join("\n\n");
  return { node, words };
}
