import type { Column, Value } from "../cases/types.js";
import { stepOf } from "../cases/values/technique-words.js";
import type { Technique, TechniquePlan } from "./types.js";

/** Sorts the values of the technique columns onto the ladder; those it cannot place are said, and take no part. */
export function draftTechnique(
  first: Column | undefined,
  final: Column | undefined,
  valuesOf: (column: Column) => Value[],
): { readonly plan: TechniquePlan; readonly assumptions: readonly string[] } | undefined {
  const column = first ?? final;
  if (column === undefined) return undefined;
  const texts = [column, ...(final === undefined ? [] : [final])]
    .flatMap(valuesOf)
    .flatMap((value) => (value.kind === "text" ? [value.text.trim()] : []));
  const placed: Record<Technique, string[]> = { closed: [], assisted: [], open: [] };
  const unplaced: string[] = [];
  for (const text of new Set(texts)) {
    const step = stepOf(text);
    (step === undefined ? unplaced : placed[step]).push(text);
  }
  const plan: TechniquePlan = {
    first: column.name,
    ...(final !== undefined && final !== column ? { final: final.name } : {}),
    ...placed,
    conversionFails: ["assisted", "open"],
  };
  return { plan, assumptions: said(plan, first, unplaced) };
}

function said(plan: TechniquePlan, first: Column | undefined, unplaced: readonly string[]): string[] {
  const steps = (["closed", "assisted", "open"] as const).filter((step) => plan[step].length > 0);
  const lines = [`techniques: ${steps.map((step) => `${step} is ${plan[step].join(" or ")}`).join("; ")}`];
  if (first === undefined)
    lines.push(
      `only the final technique is known ("${plan.first}"): conversions are hidden and closed treatment looks better than it was`,
    );
  if (unplaced.length > 0)
    lines.push(`not placed on the ladder, so left out of the comparison: ${unplaced.join("; ")}`);
  if (plan.final !== undefined) lines.push("a closed attempt that ended assisted or open counts as a closed failure");
  return lines;
}
