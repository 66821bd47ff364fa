import type { Countdown } from "./countdown.js";
import { button, element } from "./element.js";
import { keyList } from "./key-list.js";

export interface StageOptions {
  /** Ids of the sections that are shown one at a time, in order. */
  readonly screens: () => readonly string[];
  readonly timer: Countdown;
  /** Takes back the last thing typed. */
  readonly undo: () => void;
  readonly tell: (message: string) => void;
}

const keys = [
  { keys: "→ ↓ PageDown Space", does: "next question" },
  { keys: "← ↑ PageUp", does: "question before" },
  { keys: "Home, End", does: "first and last question" },
  { keys: "Tab", does: "to the fields, sliders and buttons of the question" },
  { keys: "P", does: "present, or leave" },
  { keys: "F", does: "full screen, or back" },
  { keys: "T", does: "start or pause the timer" },
  { keys: "N", does: "presenter notes: show or hide" },
  { keys: "U", does: "undo the last vote typed" },
  { keys: "?", does: "these keys" },
  { keys: "Esc", does: "out of a field; then out of presenting" },
];

/** One question a screen, in big type, by keyboard. The sections stay where they are; the style sheet hides all but
 * the one on stage, those too that are laid later. */
export function stage({ screens, timer, undo, tell }: StageOptions) {
  const dialog = keyList(keys);
  let at: number | null = null;
  const place = element("span", { class: "place" });
  const section = (id: string): HTMLElement | null => document.getElementById(id);
  const show = (next: number): void => {
    const ids = screens();
    at = Math.max(0, Math.min(ids.length - 1, next));
    for (const one of document.querySelectorAll("main .question")) one.classList.toggle("on-stage", one.id === ids[at]);
    place.textContent = `${at + 1} of ${ids.length}`;
    const heading = section(ids[at]!)?.querySelector("h2");
    heading?.setAttribute("tabindex", "-1");
    heading?.focus();
    window.scrollTo(0, 0);
    tell(`${at + 1} of ${ids.length}: ${heading?.textContent ?? ""}`);
  };
  const step = (by: number): void => {
    if (at !== null) show(at + by);
  };
  const fullScreen = async (): Promise<void> => {
    if (document.fullscreenElement) await document.exitFullscreen();
    else if (document.fullscreenEnabled) await document.documentElement.requestFullscreen();
    else tell("This browser does not allow full screen.");
  };
  const present = (): void => {
    document.body.classList.add("presenting");
    bar.hidden = false;
    show(0);
  };
  const leave = (): void => {
    at = null;
    document.body.classList.remove("presenting");
    bar.hidden = true;
    for (const one of document.querySelectorAll("main .on-stage")) one.classList.remove("on-stage");
    if (document.fullscreenElement) void document.exitFullscreen();
    start.focus();
  };
  const notes = (): void => {
    document.body.classList.toggle("with-notes");
  };
  const bar = element(
    "div",
    { class: "stage-bar", role: "region", "aria-label": "Presenting", hidden: true },
    button("Back", () => step(-1), "Back: the question before"),
    place,
    button("Next", () => step(1), "Next question"),
    timer.node,
    button("Undo", undo, "Undo the last vote typed"),
    button("Notes", notes, "Presenter notes"),
    button("Full screen", fullScreen),
    button("Keys", () => dialog.showModal()),
    button("Leave", leave, "Leave presenting"),
  );
  const start = button("Present", present);
  start.classList.add("main");
  const act: Readonly<Record<string, () => void>> = {
    arrowright: () => step(1),
    arrowdown: () => step(1),
    pagedown: () => step(1),
    " ": () => step(1),
    arrowleft: () => step(-1),
    arrowup: () => step(-1),
    pageup: () => step(-1),
    home: () => at !== null && show(0),
    end: () => at !== null && show(screens().length - 1),
    f: () => void fullScreen(),
    t: timer.toggle,
    n: notes,
    u: undo,
    p: () => (at === null ? present() : leave()),
    "?": () => dialog.showModal(),
    escape: () => at !== null && leave(),
  };
  /** At any time; the others only while presenting, as the page itself scrolls by some of them. */
  const always = ["p", "?"];
  document.addEventListener("keydown", (event) => {
    if (event.ctrlKey || event.metaKey || event.altKey || document.querySelector("dialog[open]")) return;
    const key = event.key.toLowerCase();
    const field = (event.target as HTMLElement).closest?.("input, select, textarea");
    if (field) {
      // In a field the keys write; Escape leads out of it, and whole pages still turn.
      if (key === "escape" && at !== null) section(screens()[at]!)?.querySelector("h2")?.focus();
      if (key !== "pagedown" && key !== "pageup") return;
    }
    if (key === " " && (event.target as HTMLElement).closest?.("button, summary, a")) return;
    const does = act[key];
    if (!does || (at === null && !always.includes(key))) return;
    // A question taller than the screen scrolls up and down.
    if ((key === "arrowdown" || key === "arrowup") && document.documentElement.scrollHeight > innerHeight + 4) return;
    event.preventDefault();
    does();
  });
  document.body.append(bar, dialog);
  return { start, present, keys: button("Keys", () => dialog.showModal(), "Keys for presenting") };
}
