import { sectionPictures } from "../../charts/section-pictures.js";
import { svgOf } from "../../charts/svg-of.js";
import type { Findings } from "../../findings/types.js";
import { pngOf } from "../png-of.js";

export interface DrawnFigures {
  readonly files: readonly (readonly [name: string, content: string | Uint8Array])[];
  readonly bySection: ReadonlyMap<string, readonly { readonly svg: string; readonly caption: string }[]>;
}

/** Every picture of the page as SVG and as PNG at 300 dpi. */
export async function drawFigures(findings: Findings, said: (step: string) => void): Promise<DrawnFigures> {
  const pictures = sectionPictures(findings);
  const files: [string, string | Uint8Array][] = [];
  const bySection = new Map<string, { svg: string; caption: string }[]>();
  for (const [i, { section, name, drawing, title, description, caption }] of pictures.entries()) {
    const { spec, rows } = drawing();
    const svg = await svgOf(spec, rows, { title, description });
    files.push([`${name}.svg`, svg], [`${name}.png`, await pngOf(svg, { dpi: 300 })]);
    bySection.set(section, [...(bySection.get(section) ?? []), { svg, caption }]);
    said(`figure ${i + 1} of ${pictures.length}`);
  }
  return { files, bySection };
}
