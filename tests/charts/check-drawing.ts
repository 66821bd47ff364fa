import { compile, type TopLevelSpec } from "vega-lite";
import { expect } from "vitest";
import type { Drawing } from "../../src/charts/drawing.js";

/**
 * What holds of every picture: each field exists in the rows it is drawn from (an unknown one is drawn as nothing,
 * without a warning), the specification compiles without a warning, and the picture computes nothing.
 */
export function checkDrawing({ spec, rows }: Drawing): void {
  for (const { data, fields } of layersOf(spec))
    for (const row of rows[data] ?? [])
      for (const field of fields) expect(row, `${data}.${field}`).toHaveProperty(field);
  expect(warningsOf(spec)).toEqual([]);
  expect(JSON.stringify(spec)).not.toMatch(/"(aggregate|extent|calculate|bin|transform|timeUnit)"/);
  for (const [name, list] of Object.entries(rows))
    for (const row of list)
      for (const value of Object.values(row)) expect(Number.isNaN(value), `${name} holds a NaN`).toBe(false);
}

/** Data set and fields of every layer, the data inherited from the layer around it. */
function layersOf(node: unknown, inherited = ""): { data: string; fields: string[] }[] {
  const { data, layer, encoding } = node as { data?: { name?: string }; layer?: unknown[]; encoding?: object };
  const name = data === undefined ? inherited : (data.name ?? "");
  if (layer) return layer.flatMap((part) => layersOf(part, name));
  return name === "" ? [] : [{ data: name, fields: fieldsOf(encoding) }];
}

function fieldsOf(node: unknown): string[] {
  if (node === null || typeof node !== "object") return [];
  return Object.entries(node).flatMap(([key, value]) => (key === "field" ? [String(value)] : fieldsOf(value)));
}

function warningsOf(spec: TopLevelSpec): unknown[] {
  const warnings: unknown[] = [];
  const logger = {
    level: () => logger,
    warn: (...words: unknown[]) => (warnings.push(...words), logger),
    error: (...words: unknown[]) => (warnings.push(...words), logger),
    info: () => logger,
    debug: () => logger,
  };
  compile(spec, { logger: logger as never });
  return warnings;
}
