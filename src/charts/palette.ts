/** The inks of the house. On a page they are CSS variables (light, dark and print need no redraw), in a file these. */
export const paper = {
  ink: "#17232c",
  soft: "#5c6870",
  line: "#d9d4c7",
  plate: "#fffefb",
  closed: "#146c73",
  assisted: "#6d4d8f",
  open: "#c0561a",
} as const;
export type Ink = keyof typeof paper;

/** Colour of an ink as a page resolves it. */
export const ink = (name: Ink): string => `var(--${name})`;

const painted = ["closed", "assisted", "open", "soft"] as const;
/** Scale of every fill and stroke that a row names; "none" leaves the paper. */
export const colours = { domain: [...painted, "none"], range: [...painted.map(ink), "transparent"] };

/** A copy of a specification with every CSS variable replaced by its colour on paper. */
export function onPaper<T>(spec: T): T {
  if (typeof spec === "string") return inkOf(spec) as T;
  if (Array.isArray(spec)) return spec.map(onPaper) as T;
  if (spec === null || typeof spec !== "object") return spec;
  return Object.fromEntries(Object.entries(spec).map(([key, value]) => [key, onPaper(value)])) as T;
}

function inkOf(text: string): string {
  const name = /^var\(--(\w+)\)$/.exec(text)?.[1];
  return name !== undefined && name in paper ? paper[name as Ink] : text;
}
