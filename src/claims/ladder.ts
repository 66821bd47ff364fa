import type { LinkedSentence } from "./reading/link.js";
import { isCaseUnit } from "./reading/units.js";
import type { Span } from "./text/token.js";

/** One step of the ladder of denominators, in order of appearance. */
export interface LadderStep extends Span {
  readonly value: number;
  readonly unit: string | null;
  /** Change against the step before it in the same unit; null for the first, and where no unit is printed. */
  readonly change: number | null;
}

/** Every whole that a text names, with its unit, where it changes and by how much. Repeats are left out. */
export function ladderOf(text: string, sentences: readonly LinkedSentence[]): LadderStep[] {
  const steps: LadderStep[] = [];
  const last = new Map<string, number>();
  for (const { reading } of sentences)
    for (const fact of reading.facts) {
      const whole = fact.kind === "whole" ? fact.value : fact.kind === "count" ? fact.trials : null;
      const listed = fact.kind === "whole" && !fact.leads && (reading.cursor.depth[fact.from] ?? 0) > 0;
      if (whole === null || listed || (fact.kind !== "whole" && fact.kind !== "count")) continue;
      const unit = isCaseUnit(fact.unit) ? fact.unit : null;
      const key = unit ?? "case";
      const before = last.get(key);
      if (before === whole) continue;
      last.set(key, whole);
      const [start, end] = [reading.tokens[fact.from]!.start, reading.tokens[fact.to - 1]!.end];
      steps.push({
        text: text.slice(start, end),
        start,
        end,
        value: whole,
        unit,
        change: unit === null || before === undefined ? null : whole - before,
      });
    }
  return steps;
}
