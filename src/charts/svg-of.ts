import type { TopLevelSpec } from "vega-lite";
import type { DrawingRows, PictureText } from "./drawing.js";
import { onPaper } from "./palette.js";
import { viewOf } from "./view-of.js";

/**
 * A picture as a self-contained SVG file in the colours of paper; the same bytes in Node and in a browser.
 *
 * @param text.title name of the picture, the file's `<title>`
 * @param text.description what it shows, the file's `<desc>`
 */
export async function svgOf(spec: TopLevelSpec, rows: DrawingRows, text: PictureText): Promise<string> {
  const view = viewOf(onPaper({ ...spec, background: "var(--plate)" }), rows);
  const svg = await view.toSVG();
  view.finalize();
  const said = `<title>${escaped(text.title)}</title><desc>${escaped(text.description)}</desc>`;
  return svg.replace(/^<svg ([^>]*)>/, (_all, attributes: string) => `<svg ${attributes} role="img">${said}`);
}

const escaped = (text: string): string => text.replace(/[&<>"]/g, (sign) => `&#${sign.charCodeAt(0)};`);
