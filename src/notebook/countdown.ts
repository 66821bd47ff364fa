import { button, element } from "./element.js";

export interface Countdown {
  readonly node: HTMLElement;
  /** Starts it, or pauses it. */
  readonly toggle: () => void;
}

/** A timer that counts down, goes on below zero, and can be paused. */
export function countdown(minutes: number): Countdown {
  let left = minutes * 60_000;
  let startedAt: number | null = null;
  let ticking: ReturnType<typeof setInterval> | undefined;
  const shown = element("span", { class: "time", role: "timer", "aria-label": "Time left" });
  const start = button("Start", () => toggle(), "Start the timer");
  const now = (): number => (startedAt === null ? left : left - (performance.now() - startedAt));
  const show = (): void => {
    const seconds = Math.ceil(Math.abs(now()) / 1000);
    const text = `${Math.floor(seconds / 60)}:${String(seconds % 60).padStart(2, "0")}`;
    shown.textContent = now() < 0 ? `${text} over` : text;
  };
  const toggle = (): void => {
    if (startedAt === null) {
      startedAt = performance.now();
      ticking = setInterval(show, 250);
    } else {
      left = now();
      startedAt = null;
      clearInterval(ticking);
    }
    start.textContent = startedAt === null ? "Start" : "Pause";
    start.setAttribute("aria-label", `${start.textContent} the timer`);
    show();
  };
  show();
  return { node: element("span", { class: "countdown" }, shown, start), toggle };
}
