import type { Draft } from "./doubts.js";
import type { Redact } from "./quarantine.js";
import { showValue } from "./show-value.js";
import { plainHeading } from "./table/heading-words.js";
import type { Column, Value } from "./types.js";
import { negativeHeading } from "./values/read-yes-no.js";
import { staffNames } from "./values/staff.js";

const shownExamples = 3;

/** A column for the table's reader; identifiers and notes without examples. */
export function describeColumn(draft: Draft, k: number, redact: Redact): Column {
  const { names, roles, positions, facts, values } = draft;
  const [name, role, unit] = [names[k]!, roles[k]!, facts[k]!.unit];
  const examples = new Set<string>();
  // Like cells share their value.
  const seen = new Set<Value>();
  if (role !== "identifier" && role !== "note")
    for (const value of values[k]!) {
      if (examples.size >= shownExamples) break;
      if (seen.has(value)) continue;
      seen.add(value);
      if (value.kind !== "missing" && value.kind !== "asked") examples.add(redact(showValue(value)));
    }
  return {
    name,
    role,
    position: positions[k]! + 1,
    examples: [...examples],
    ...(role === "success" ? { sense: negativeHeading(name) ? "negative" : "positive" } : {}),
    ...(unit === undefined ? {} : { unit }),
    ...(role === "operator" && namesStaff(draft, k) ? { coded: true } : {}),
    ...(role === "measurement" ? limbOf(name) : {}),
  };
}

function namesStaff({ lines, positions }: Draft, k: number): boolean {
  const at = positions[k]!;
  return staffNames(lines.flatMap(({ row }) => row.cells[at] ?? [])).length > 0;
}

/** The limb that a heading of a measurement names. */
export function limbOf(name: string): Pick<Column, "limb"> {
  const words = plainHeading(name);
  const left = /\b(l|lt|left|links|gauche|izq\w*|sinistr\w*)\b/.test(words);
  const right = /\b(r|rt|right|rechts|droite?|der|derech\w*|destr\w*)\b/.test(words);
  if (left !== right) return { limb: left ? "left" : "right" };
  if (/\b(other|opposite|contralateral|uninjured|unaffected|uninj|normal|healthy|gesund\w*|gegenseite)\b/.test(words))
    return { limb: "other" };
  return left ? {} : { limb: "treated" };
}
