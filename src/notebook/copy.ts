import { harmless } from "../report/csv-table.js";
import { spanText, type TextTable } from "../report/text.js";

/**
 * Puts tables on the clipboard, for a word processor as HTML and for a spreadsheet as tab-separated text; no cell
 * starts a formula. The HTML has attributes and no inline styles: a browser holds what is copied to the page's policy.
 */
export async function copyTables(tables: readonly TextTable[]): Promise<void> {
  const html = `<meta charset="utf-8">${tables.map(tableHtml).join("")}`;
  await write({ "text/html": html, "text/plain": tables.map(tableText).join("\n\n") });
}

/** The table as lines of tab-separated cells. */
export function tableText({ head, rows }: TextTable): string {
  return [head, ...rows.map((row) => row.map(spanText))]
    .map((row) => row.map((cell) => harmless(cell.replace(/[\t\r\n]+/g, " "))).join("\t"))
    .join("\n");
}

export async function copyText(text: string): Promise<void> {
  await write({ "text/plain": text });
}

/** The table as HTML for a word processor. */
export function tableHtml({ caption, head, rows, notes }: TextTable): string {
  const cells = (row: readonly string[], tag: "td" | "th"): string =>
    `<tr>${row.map((text) => `<${tag} align="left" valign="top">${escaped(text)}</${tag}>`).join("")}</tr>`;
  const body = rows.map((row) => cells(row.map(spanText), "td")).join("");
  const foot = notes.map((note) => `<p>${escaped(note)}</p>`).join("");
  return `<table border="1" cellspacing="0" cellpadding="4"><caption>${escaped(caption)}</caption><thead>${cells(head, "th")}</thead><tbody>${body}</tbody></table>${foot}`;
}

const escaped = (text: string): string => text.replace(/[&<>"']/g, (sign) => `&#${sign.charCodeAt(0)};`);

async function write(kinds: Readonly<Record<string, string>>): Promise<void> {
  try {
    const blobs = Object.entries(kinds).map(([type, text]) => [type, new Blob([text], { type })]);
    await navigator.clipboard.write([new ClipboardItem(Object.fromEntries(blobs) as Record<string, Blob>)]);
  } catch {
    // Where the page may not use the clipboard itself (a file opened from disk in some browsers), the copy event may.
    if (!writeByEvent(kinds)) throw new Error("the browser did not allow copying");
  }
}

function writeByEvent(kinds: Readonly<Record<string, string>>): boolean {
  let written = false;
  const put = (event: ClipboardEvent): void => {
    event.preventDefault();
    for (const [type, text] of Object.entries(kinds)) event.clipboardData?.setData(type, text);
    written = event.clipboardData !== null;
  };
  document.addEventListener("copy", put, { once: true });
  document.execCommand("copy");
  document.removeEventListener("copy", put);
  return written;
}
