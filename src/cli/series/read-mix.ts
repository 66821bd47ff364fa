import { InputError } from "../input-error.js";
import type { GradeMix } from "../../stats/series/series-rates.js";

/**
 * A mix of grades from text such as "I 10, II 20": grade and weight, parted by commas.
 * @param grades those of the file; the mix must name no other
 * @throws InputError naming the part and the rule
 */
export function readMix(text: string, grades: readonly string[]): GradeMix {
  const mix = text.split(",").map((part) => readPart(part.trim(), grades));
  const repeated = mix.find(({ grade }, i) => mix.findIndex((other) => other.grade === grade) !== i);
  if (repeated) throw new InputError(`mix: grade "${repeated.grade}" must stand once, got it twice`);
  if (mix.every(({ weight }) => weight === 0)) throw new InputError("mix: the weights must add up to more than 0");
  return mix;
}

function readPart(part: string, grades: readonly string[]): { readonly grade: string; readonly weight: number } {
  const [, grade, number] = /^(.+?)\s+(\d+(?:\.\d+)?)$/.exec(part) ?? [];
  if (grade === undefined)
    throw new InputError(`mix: each part must be a grade and its weight, as "II 20", got "${part}"`);
  if (!grades.includes(grade))
    throw new InputError(`mix: a grade must be one of the file (${grades.join(", ")}), got "${grade}"`);
  return { grade, weight: Number(number) };
}
