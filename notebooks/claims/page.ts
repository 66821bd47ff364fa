import type { CheckedText } from "../../src/claims/check-text.js";
import { overall } from "../../src/claims/review-comments.js";
import { copyText } from "../../src/notebook/copy.js";
import { button, element } from "../../src/notebook/element.js";
import { startNotebook } from "../../src/notebook/notebook.js";
import { pageShell } from "../../src/notebook/page-shell.js";
import { caution } from "../../src/report/caution.js";
import { notebookLinks } from "../notebook-links.js";
import { claimSum } from "./claim-sum.js";
import { claims } from "./claims.js";
import { commentsList } from "./comments-list.js";
import example from "./example.txt?raw";
import { markedText } from "./marked-text.js";

const shell = pageShell(notebookLinks("claims"), caution);
const notebook = startNotebook(claims(example));

const pasted = element("textarea", { id: "pasted", rows: 16, spellcheck: "false" });
pasted.value = example;
let waiting: ReturnType<typeof setTimeout> | undefined;
pasted.addEventListener("input", () => {
  clearTimeout(waiting);
  waiting = setTimeout(() => notebook.set("text", pasted.value), 250);
});
const clear = button("Clear", () => {
  pasted.value = "";
  notebook.set("text", "");
  pasted.focus();
});
const style = element("input", { id: "style", type: "checkbox" });
style.addEventListener("change", () => notebook.set("style", style.checked));
const styleChoice = element("label", { for: "style" }, style, " Also remark on wording (no verdict)");
const wording = element("ul", { "aria-label": "Remarks on wording" });
const [marked, sum, ladder, left] = [
  element("div"),
  element("div", { "aria-live": "polite" }),
  element("p"),
  element("p"),
];
const hint = "Paste an abstract, a results section or a table. It stays on this computer and is not stored.";
const open = (checked: CheckedText, i: number): void => sum.replaceChildren(claimSum(checked.claims[i]!));
shell.main.append(
  section(
    "claims-read",
    "Does the printed number hold?",
    [element("label", { for: "pasted" }, hint), pasted, element("div", { class: "bar" }, clear, styleChoice)],
    [
      marked,
      element("p", { class: "note" }, "✓ holds, ✗ fails, ? cannot be checked. Choose a number to see its sum."),
      sum,
      wording,
    ],
  ),
);
const [comments, words] = [element("div"), { all: (): string => "" }];
const copyAll = button("Copy all", async () => {
  try {
    await copyText(words.all());
    shell.say("Comments copied");
  } catch (error) {
    shell.say(`Not copied: ${(error as Error).message}`);
  }
});
shell.main.append(
  section(
    "comments",
    "What would I ask the authors?",
    [ladder, left, element("div", { class: "bar" }, copyAll)],
    [comments],
  ),
);

notebook.observe("checked", {
  fulfilled: (checked) => {
    if (checked === null) {
      shell.showHead({
        over: "0",
        under: "0",
        title: "Reported claims",
        line: "nothing pasted yet · stays on this computer",
      });
      for (const node of [marked, sum, wording, ladder, left]) node.replaceChildren();
      return;
    }
    show(checked);
  },
  rejected: (message) => marked.replaceChildren(element("p", { class: "error" }, message)),
});
notebook.observe("review", {
  fulfilled: (review) => {
    const list = review === null ? null : commentsList(review);
    words.all = list?.words ?? (() => "");
    comments.replaceChildren(...(list ? [list.node] : []));
    copyAll.hidden = list === null;
  },
  rejected: (message) => comments.replaceChildren(element("p", { class: "error" }, message)),
});

function show(checked: CheckedText): void {
  const [fails, holds] = (["fails", "holds"] as const).map(
    (light) => checked.claims.filter((one) => overall(one) === light).length,
  );
  const line = `${checked.claims.length} claims read · ${fails} to ask about · stays on this computer`;
  shell.showHead({ over: String(holds), under: String(checked.claims.length), title: "Reported claims", line });
  marked.replaceChildren(markedText(pasted.value, checked, (i) => open(checked, i)));
  const first = checked.claims.findIndex((one) => overall(one) === "fails");
  if (first >= 0) open(checked, first);
  else sum.replaceChildren();
  wording.replaceChildren(
    ...(checked.styleHints ?? []).map(({ text, hint }) => element("li", {}, `"${text}": ${hint}`)),
  );
  const steps = checked.denominators.map(
    ({ value, unit, change }) =>
      `${value}${unit ? ` (${unit})` : ""}${change ? `, ${change > 0 ? "+" : "−"}${Math.abs(change)}` : ""}`,
  );
  ladder.textContent = steps.length > 0 ? `Denominators in order of appearance: ${steps.join("; ")}.` : "";
  left.textContent =
    checked.notUnderstood.length > 0
      ? `Not understood: ${checked.notUnderstood.map(({ text }) => text).join("; ")}.`
      : "Every number was read.";
}

function section(
  id: string,
  question: string,
  told: readonly HTMLElement[],
  shown: readonly HTMLElement[],
): HTMLElement {
  const heading = element("h2", { id: `${id}-question` }, question);
  return element(
    "section",
    { id, class: "question", "aria-labelledby": `${id}-question` },
    element("div", { class: "told" }, heading, ...told),
    element("div", { class: "shown" }, ...shown),
  );
}
