import { element } from "./element.js";

/** A notebook as the navigation names it. */
export interface NotebookLink {
  readonly name: string;
  readonly address: string;
  readonly current: boolean;
}

/** What stands in the head of the page: the fraction that is the mark of the house, a title, a line below it. */
export interface PageHead {
  readonly over: string;
  readonly under: string;
  readonly title: string;
  readonly line: string;
}

export interface PageShell {
  readonly main: HTMLElement;
  readonly showHead: (head: PageHead) => void;
  /** Shows a short message for a few seconds; read aloud at once. */
  readonly say: (message: string) => void;
  /** Read aloud, not shown; the last of a quick row only. */
  readonly tell: (message: string) => void;
}

/** Lays the page: head with mark and navigation, main, foot with the caution, live regions. */
export function pageShell(notebooks: readonly NotebookLink[], caution: string): PageShell {
  const [over, under] = [element("b"), element("b")];
  const mark = element("span", { class: "mark", "aria-hidden": "true" }, over, element("i"), under);
  const [title, line] = [element("h1"), element("p", { class: "line" })];
  const links = notebooks.map(({ name, address, current }) =>
    element("a", { href: address, ...(current ? { "aria-current": "page" } : {}) }, name),
  );
  const nav = element("nav", { "aria-label": "Notebooks" }, ...links);
  const main = element("main", { id: "main", tabindex: -1 });
  const foot = element("footer", {}, element("p", { class: "caution" }, caution));
  const notice = element("div", { class: "notice", role: "status" });
  const spoken = element("div", { class: "spoken", role: "status" });
  document.body.append(
    element("a", { class: "skip", href: "#main" }, "Skip to the questions"),
    element("header", {}, mark, element("div", { class: "head" }, title, line), nav),
    main,
    foot,
    notice,
    spoken,
  );
  openTablesInPrint();
  return {
    main,
    showHead(head) {
      over.textContent = head.over;
      under.textContent = head.under;
      title.textContent = head.title;
      line.textContent = head.line;
      document.title = `${head.title} · Denominator`;
    },
    say: sayFor(notice, 4000),
    tell: afterQuiet(spoken, 500),
  };
}

function sayFor(node: HTMLElement, milliseconds: number): (message: string) => void {
  let timer: ReturnType<typeof setTimeout> | undefined;
  return (message) => {
    clearTimeout(timer);
    node.textContent = message;
    timer = setTimeout(() => (node.textContent = ""), milliseconds);
  };
}

function afterQuiet(node: HTMLElement, milliseconds: number): (message: string) => void {
  let timer: ReturnType<typeof setTimeout> | undefined;
  return (message) => {
    clearTimeout(timer);
    timer = setTimeout(() => (node.textContent = message), milliseconds);
  };
}

/** What is folded on the screen is open on paper. */
function openTablesInPrint(): void {
  let folded: HTMLDetailsElement[] = [];
  window.addEventListener("beforeprint", () => {
    folded = [...document.querySelectorAll<HTMLDetailsElement>("main details:not([open], .aside)")];
    for (const one of folded) {
      one.open = true;
      // The browser tells of it only after printing.
      one.dispatchEvent(new Event("toggle"));
    }
  });
  window.addEventListener("afterprint", () => {
    for (const one of folded) one.open = false;
  });
}
