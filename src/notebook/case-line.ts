import type { CaseCard } from "../findings/types.js";

/** One case in one line: its number, grade, technique and outcome. */
export function caseLine({ id, grade, firstTechnique, finalTechnique, outcome }: CaseCard): string {
  const went =
    firstTechnique === null
      ? "technique not known"
      : finalTechnique === null || finalTechnique === firstTechnique
        ? firstTechnique
        : `${firstTechnique}, then ${finalTechnique}`;
  return [id, grade === null ? "no grade" : `grade ${grade}`, went, outcome].join(" · ");
}
