import type { Answers, Role } from "../../src/cases/types.js";

/** What the reader said of a sheet. */
export interface Edits {
  readonly answers: Answers;
  readonly roles: Readonly<Record<string, Role>>;
}

/** What was said, with every step before it and every step that was taken back. */
export interface EditHistory {
  readonly past: readonly Edits[];
  readonly now: Edits;
  readonly future: readonly Edits[];
}

export const untouched: EditHistory = { past: [], now: { answers: {}, roles: {} }, future: [] };

/** One more step; what was taken back before is gone. */
export function edited({ past, now }: EditHistory, edits: Edits): EditHistory {
  return { past: [...past, now], now: edits, future: [] };
}

/** One step back; the same history when there is none. */
export function undone({ past, now, future }: EditHistory): EditHistory {
  const last = past.at(-1);
  return last === undefined ? { past, now, future } : { past: past.slice(0, -1), now: last, future: [now, ...future] };
}

/** The step that was taken back last, taken again; the same history when there is none. */
export function redone({ past, now, future }: EditHistory): EditHistory {
  const [next, ...rest] = future;
  return next === undefined ? { past, now, future } : { past: [...past, now], now: next, future: rest };
}
