import * as vega from "vega";
import { expressionInterpreter } from "vega-interpreter";
import { compile, type TopLevelSpec } from "vega-lite";
import type { DrawingRows } from "./drawing.js";
import { textWidth } from "./text-width.js";

/** What Vega asks when it measures; its types leave the function out. */
interface TextItem {
  readonly fontSize?: number;
  readonly fontWeight?: number | string;
  readonly font?: string;
}
const measures = vega as unknown as { textMetrics: { width: (item: TextItem, text: unknown) => number } };

// Without a canvas Vega guesses widths; with one it uses whatever font the machine has. A table gives equal bytes everywhere.
measures.textMetrics.width = (item, text) => {
  const bold = item.fontWeight === "bold" || Number(item.fontWeight) >= 600;
  const face = /serif/i.test(item.font?.split(",")[0] ?? "") ? "serifBold" : bold ? "sansBold" : "sans";
  const lines = Array.isArray(text) ? text.map(String) : [typeof text === "string" ? text : String(text as number)];
  return Math.max(...lines.map((line) => textWidth(line, item.fontSize ?? 11, face)));
};

const refuse = (address: string): Promise<never> => Promise.reject(new Error(`no picture loads anything: ${address}`));
const loader = { load: refuse, sanitize: refuse, http: refuse, file: refuse } as unknown as vega.Loader;

/**
 * A view of a picture, not yet shown anywhere. Expressions are interpreted, never turned into code, and nothing is
 * loaded. Rows are copied: Vega writes into those it is given.
 */
export function viewOf(spec: TopLevelSpec, rows: DrawingRows): vega.View {
  const runtime = vega.parse(compile(spec).spec, {}, { ast: true });
  const view = new vega.View(runtime, { renderer: "none", loader, expr: expressionInterpreter, logLevel: vega.Warn });
  return setRows(view, rows);
}

/** Replaces the rows of a view; the caller runs it. */
export function setRows(view: vega.View, rows: DrawingRows): vega.View {
  for (const [name, list] of Object.entries(rows))
    view.data(
      name,
      list.map((row) => ({ ...row })),
    );
  return view;
}
