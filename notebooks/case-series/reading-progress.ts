import { button, element } from "../../src/notebook/element.js";

/** How far a long work is, shown only when it lasts; its words are read aloud at each tenth. */
export interface WorkProgress {
  readonly node: HTMLElement;
  /** @param share of it that is done, when that is known */
  readonly show: (words: string, share?: number) => void;
  readonly done: () => void;
}

/** Quick work never shows it (milliseconds). */
const patience = 200;

/** @param giveUp ends the work, where it can be ended */
export function workProgress(giveUp?: () => void): WorkProgress {
  const words = element("span", { role: "status" });
  const bar = element("progress", { max: 1, "aria-label": "Share that is done" });
  const node = element("div", { class: "working", hidden: true }, words, bar);
  if (giveUp) node.append(button("Cancel", giveUp));
  let waiting: ReturnType<typeof setTimeout> | undefined;
  return {
    node,
    show(text, share) {
      waiting ??= setTimeout(() => (node.hidden = false), patience);
      const said = share === undefined ? `${text} …` : `${text}: ${Math.floor(share * 10) * 10}%`;
      if (words.textContent !== said) words.textContent = said;
      if (share === undefined) bar.removeAttribute("value");
      else bar.value = share;
    },
    done() {
      clearTimeout(waiting);
      waiting = undefined;
      node.hidden = true;
      words.textContent = "";
    },
  };
}
