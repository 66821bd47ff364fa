import type { View } from "vega";
import type { Drawing } from "../charts/drawing.js";
import { element } from "./element.js";

/** What is shown: a drawing for any width, and what it says to those who cannot see it. */
export interface ShownPicture {
  readonly description: string;
  /** May be worked out elsewhere; null when there is nothing to draw any longer. */
  readonly drawing: (width?: number) => Drawing | null | Promise<Drawing | null>;
}

/** A place for a picture that follows its width and its data. */
export interface PictureHost {
  readonly node: HTMLElement;
  readonly show: (picture: ShownPicture) => void;
}

const [narrowest, widest] = [256, 860];
/** Pictures out of sight follow when nothing has changed for so long (milliseconds). */
const patience = 180;

/**
 * A picture on the page. A change of data changes the rows of the view; a change of shape or width draws it anew.
 * @param tipOf what to say of the case under the pointer, or undefined
 * @param openCase called with the id of a case whose mark is clicked
 */
export function pictureHost(tipOf: (id: string) => string | undefined, openCase: (id: string) => void): PictureHost {
  const canvas = element("div", { class: "canvas", "aria-hidden": "true" });
  const tip = element("div", { class: "tip", "aria-hidden": "true", hidden: true });
  const node = element("div", { class: "picture", role: "img" }, canvas, tip);
  const shown: { picture?: ShownPicture; view?: View; key?: string; running?: boolean; again?: boolean } = {};

  const draw = async (picture: ShownPicture): Promise<void> => {
    // Where the page is set larger (a projector) the picture is drawn narrower and shown larger, its text with it.
    const enlarged = Number.parseFloat(getComputedStyle(document.body).fontSize) / 16;
    const width = Math.min(widest, Math.max(narrowest, Math.floor(node.clientWidth / enlarged)));
    const drawing = await picture.drawing(width);
    if (drawing === null) return;
    const { spec, rows } = drawing;
    const key = JSON.stringify(spec);
    node.setAttribute("aria-label", picture.description);
    if (!shown.view) canvas.style.minHeight = `${heightOf(spec) * enlarged}px`;
    const { viewOf, setRows } = await import("../charts/view-of.js");
    if (shown.view && shown.key === key) {
      await setRows(shown.view, rows).runAsync();
      return;
    }
    shown.view?.finalize();
    shown.key = key;
    shown.view = viewOf(spec, rows).renderer("svg").initialize(canvas);
    for (const name of ["role", "aria-label", "aria-roledescription"]) canvas.removeAttribute(name);
    listen(shown.view, tip, node, tipOf, openCase);
    await shown.view.runAsync();
    canvas.style.minHeight = "";
  };
  // A picture out of sight waits, so that the one in sight follows a control at once.
  const sight = { seen: true, waiting: undefined as ReturnType<typeof setTimeout> | undefined };
  new IntersectionObserver(([entry]) => {
    sight.seen = entry!.isIntersecting;
    if (sight.seen && sight.waiting !== undefined) redraw();
  }).observe(node);
  const redrawInTurn = (): void => {
    clearTimeout(sight.waiting);
    if (sight.seen || !shown.view) redraw();
    else sight.waiting = setTimeout(redraw, patience);
  };
  // One drawing at a time; of those asked for meanwhile only the last.
  const redraw = (): void => {
    clearTimeout(sight.waiting);
    sight.waiting = undefined;
    if (!shown.picture || node.clientWidth === 0) return;
    if (shown.running) {
      shown.again = true;
      return;
    }
    shown.running = true;
    void draw(shown.picture).finally(() => {
      shown.running = false;
      const again = shown.again;
      shown.again = false;
      if (again) redraw();
    });
  };
  new ResizeObserver(redraw).observe(node);
  return {
    node,
    show(picture) {
      shown.picture = picture;
      redrawInTurn();
    },
  };
}

function heightOf(spec: Drawing["spec"]): number {
  const { height, padding } = spec as { height: number; padding: { bottom: number } };
  return height + padding.bottom;
}

function listen(
  view: View,
  tip: HTMLElement,
  host: HTMLElement,
  tipOf: (id: string) => string | undefined,
  openCase: (id: string) => void,
): void {
  const idOf = (item: unknown): string => (item as { datum?: { id?: string } } | null)?.datum?.id ?? "";
  view.addEventListener("pointermove", (event, item) => {
    const text = idOf(item) === "" ? undefined : tipOf(idOf(item));
    tip.hidden = text === undefined;
    host.classList.toggle("pointing", text !== undefined);
    if (text === undefined) return;
    tip.textContent = text;
    const box = host.getBoundingClientRect();
    const { clientX, clientY } = event as PointerEvent;
    tip.style.left = `${Math.min(clientX - box.left + 12, box.width - tip.offsetWidth)}px`;
    tip.style.top = `${clientY - box.top + 16}px`;
  });
  host.addEventListener("pointerleave", () => {
    tip.hidden = true;
  });
  view.addEventListener("click", (_event, item) => {
    if (idOf(item) !== "") openCase(idOf(item));
  });
}
