export type Child = Node | string;

/** A new element. Children that are strings become text, never markup. */
export function element<K extends keyof HTMLElementTagNameMap>(
  tag: K,
  attributes: Readonly<Record<string, string | number | boolean>> = {},
  ...children: readonly Child[]
): HTMLElementTagNameMap[K] {
  const node = document.createElement(tag);
  for (const [name, value] of Object.entries(attributes))
    if (value !== false) node.setAttribute(name, value === true ? "" : String(value));
  node.append(...children);
  return node;
}

/** A real button that does what it says; `spoken` is its name where several buttons show the same word. */
export function button(text: string, act: () => void | Promise<void>, spoken?: string): HTMLButtonElement {
  const node = element("button", { type: "button", ...(spoken === undefined ? {} : { "aria-label": spoken }) }, text);
  node.addEventListener("click", () => void act());
  return node;
}
