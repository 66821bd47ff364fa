import { element } from "./element.js";

export interface FileDropOptions {
  readonly label: string;
  /** Endings that the file dialog offers, ".csv,.xlsx". */
  readonly accept: string;
  readonly taken: (file: File) => void | Promise<void>;
}

/** A place to drop a file anywhere on the page, or to choose one by mouse or keyboard. The file stays on the computer. */
export function fileDrop({ label, accept, taken }: FileDropOptions): HTMLElement {
  const input = element("input", { type: "file", accept, id: "sheet-file" });
  const node = element("label", { class: "drop", for: "sheet-file" }, element("span", {}, label), input);
  input.addEventListener("change", () => {
    const file = input.files?.[0];
    if (file) void taken(file);
    // The same file, corrected, can be chosen again.
    input.value = "";
  });
  for (const kind of ["dragenter", "dragover"])
    document.addEventListener(kind, (event) => {
      event.preventDefault();
      node.classList.add("over");
    });
  document.addEventListener("dragleave", (event) => {
    if (event.relatedTarget === null) node.classList.remove("over");
  });
  document.addEventListener("drop", (event) => {
    event.preventDefault();
    node.classList.remove("over");
    const file = event.dataTransfer?.files[0];
    if (file) void taken(file);
  });
  return node;
}
