import { button, element } from "./element.js";

export interface KeyLine {
  readonly keys: string;
  readonly does: string;
}

/** A dialog that lists what the keys do. */
export function keyList(lines: readonly KeyLine[]): HTMLDialogElement {
  const rows = lines.map(({ keys, does }) =>
    element("tr", {}, element("th", { scope: "row" }, element("kbd", {}, keys)), element("td", {}, does)),
  );
  const node = element("dialog", { "aria-labelledby": "keys-title" });
  node.append(
    element("h2", { id: "keys-title" }, "Keys"),
    element("table", {}, element("tbody", {}, ...rows)),
    element(
      "div",
      { class: "bar" },
      button("Close", () => node.close()),
    ),
  );
  return node;
}
