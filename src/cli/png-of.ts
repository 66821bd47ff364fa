import { createRequire } from "node:module";
import { withDpi } from "../charts/with-dpi.js";

const faces = ["DejaVuSans", "DejaVuSans-Bold", "DejaVuSerif", "DejaVuSerif-Bold"];

/**
 * A figure as a PNG drawn with the fonts that come with the kit, so that every machine gives the same bytes.
 * @param svg what `svgOf` returns; one of its pixels is 1/96 inch
 * @param options.dpi dots per inch; default 300
 */
export async function pngOf(svg: string, options: { readonly dpi?: number } = {}): Promise<Uint8Array> {
  const { dpi = 300 } = options;
  const { Resvg } = await import("@resvg/resvg-js");
  const { resolve } = createRequire(import.meta.url);
  const picture = new Resvg(svg, {
    fitTo: { mode: "zoom", value: dpi / 96 },
    font: {
      loadSystemFonts: false,
      fontFiles: faces.map((face) => resolve(`dejavu-fonts-ttf/ttf/${face}.ttf`)),
      defaultFontFamily: "DejaVu Sans",
      serifFamily: "DejaVu Serif",
      sansSerifFamily: "DejaVu Sans",
    },
  });
  return withDpi(picture.render().asPng(), dpi);
}
