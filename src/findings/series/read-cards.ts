import * as v from "valibot";
import { SheetError } from "../../cases/sheet-error.js";
import type { Findings } from "../types.js";
import { cardSchema, fault } from "./card-schema.js";
import { cardOfFindings } from "./own-card.js";
import { blankCard, type PaperCard } from "./paper-card.js";
import { readPublishedSeries } from "./read-published-series.js";

const schema = v.strictObject({ note: v.optional(v.string()), cards: v.array(cardSchema) });

export interface CardFile {
  readonly cards: readonly PaperCard[];
  /** Printed with every picture, e.g. that the series are invented. */
  readonly note?: string;
}

/**
 * Paper cards from a file: JSON as `cardsJson` writes it, or a CSV of counts (series, grade, successes, cases, perhaps
 * technique), or the findings.json of an own series.
 * @throws SheetError with every fault, named by its place
 */
export function readCards(bytes: Uint8Array, file: string): CardFile {
  const text = new TextDecoder().decode(bytes);
  return /^\uFEFF?\s*[{[]/.test(text) ? fromJson(text, file) : fromCounts(bytes, file);
}

/** Cards as they are saved. */
export function cardsJson({ cards, note }: CardFile): string {
  return `${JSON.stringify({ ...(note === undefined ? {} : { note }), cards }, null, 2)}\n`;
}

function fromJson(text: string, file: string): CardFile {
  let parsed: unknown;
  try {
    parsed = JSON.parse(text.replace(/^\uFEFF/, ""));
  } catch (error) {
    throw new SheetError(file, [{ rule: `is not JSON (${(error as Error).message})` }]);
  }
  if (isFindings(parsed))
    return {
      cards: [cardOfFindings(parsed, "Our series")],
      ...(parsed.plan.note === undefined ? {} : { note: parsed.plan.note }),
    };
  const result = v.safeParse(schema, parsed);
  if (!result.success) throw new SheetError(file, result.issues.map(fault));
  namedOnce(result.output.cards, file);
  return result.output as CardFile;
}

/** @throws SheetError when two series have one name */
export function namedOnce(cards: readonly { readonly name: string }[], file: string): void {
  const names = cards.map(({ name }) => name);
  const twice = names.filter((name, i) => names.indexOf(name) < i);
  if (twice.length > 0)
    throw new SheetError(file, [{ rule: `must name each series once, "${twice[0]}" stands twice` }]);
}

/** The findings.json that `denominator report` writes. */
function isFindings(value: unknown): value is Findings {
  const kit = (value as { kit?: { name?: unknown } } | null)?.kit;
  return kit?.name === "denominator" && typeof (value as { howOften?: unknown }).howOften === "object";
}

function fromCounts(bytes: Uint8Array, file: string): CardFile {
  const { series } = readPublishedSeries(bytes, file);
  const cards = series.map(({ name, grades }): PaperCard => ({
    ...blankCard(name, []),
    rows: grades.map((counts) => ({ ...counts, technique: "" })),
  }));
  return { cards };
}
