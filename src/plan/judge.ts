import type { Value } from "../cases/types.js";
import { comparators, type ColumnTest, type Rule } from "./types.js";

/** What a rule says of one case: "asked" while a question about one of its cells is open, "unknown" where a cell is empty. */
export type Judgement = "yes" | "no" | "asked" | "unknown";

/**
 * Judges one case by a rule, in three-valued logic (Kleene): a part that is not known leaves the whole unknown only when it
 * could change it.
 * @param valueOf the case's value in a column
 */
export function judge(rule: Rule, valueOf: (column: string) => Value): Judgement {
  if ("all" in rule) return every(rule.all.map((part) => judge(part, valueOf)));
  if ("any" in rule) return opposite(every(rule.any.map((part) => opposite(judge(part, valueOf)))));
  if ("not" in rule) return opposite(judge(rule.not, valueOf));
  return test(rule, valueOf(rule.column));
}

function every(parts: readonly Judgement[]): Judgement {
  for (const answer of ["no", "asked", "unknown"] as const) if (parts.includes(answer)) return answer;
  return "yes";
}

function opposite(judgement: Judgement): Judgement {
  return judgement === "yes" ? "no" : judgement === "no" ? "yes" : judgement;
}

function test(rule: ColumnTest, value: Value): Judgement {
  if (value.kind === "asked") return "asked";
  const comparator = comparators.find((name) => rule[name] !== undefined)!;
  const wanted = rule[comparator];
  if (comparator === "present") return yesNo((value.kind !== "missing") === wanted);
  if (comparator === "=") return equals(value, wanted as string | number | boolean);
  if (comparator === "in")
    return opposite(every((wanted as (string | number)[]).map((one) => opposite(equals(value, one)))));
  return ordered(value, comparator, wanted as number);
}

/** Words for cells that hold no value: a rule may ask for them by name, and only then do they answer. */
const missingWords: Record<string, readonly string[]> = {
  lost: ["lost", "lost to follow-up"],
  died: ["died"],
  notDone: ["not done"],
  notApplicable: ["not applicable", "n/a"],
  unknown: ["unknown"],
  blank: [""],
};

const yesWords: ReadonlySet<string> = new Set(["yes", "true", "1"]);
const noWords: ReadonlySet<string> = new Set(["no", "false", "0"]);

function equals(value: Value, wanted: string | number | boolean): Judgement {
  const word = String(wanted).trim().toLowerCase();
  if (value.kind === "missing") {
    if (missingWords[value.reason]!.includes(word)) return "yes";
    // "lost" in a column of reasons is an answer: it is not the other word that was asked for.
    const namesMissing = Object.values(missingWords).some((words) => words.includes(word));
    // "Not applicable" under a yes or no is neither; under a reason it says that there was none.
    const asksYesNo = /^(yes|no|true|false)$/.test(word);
    return namesMissing || (value.reason === "notApplicable" && !asksYesNo) ? "no" : "unknown";
  }
  if (value.kind === "number")
    return Number.isFinite(Number(word)) && word !== "" ? numberEquals(value, Number(word)) : "no";
  // A plain no is not another word that was asked for ("lost", "pathological fracture").
  if (value.kind === "yesNo") return yesNo((value.yes ? yesWords : noWords).has(word));
  if (value.kind === "list") {
    if (word === "none") return yesNo(value.items.length === 0);
    return yesNo(value.items.some((item) => item.toLowerCase() === word));
  }
  if (value.kind === "grade")
    return yesNo(value.grade.toLowerCase() === word || `${value.grade}${value.sub ?? ""}`.toLowerCase() === word);
  if (value.kind === "date") return yesNo(value.iso === word);
  return value.kind === "text" ? yesNo(value.text.trim().toLowerCase() === word) : "unknown";
}

function numberEquals(value: Extract<Value, { kind: "number" }>, wanted: number): Judgement {
  if (value.bound === undefined) return yesNo(value.number === wanted);
  const possible = value.bound === "above" ? wanted > value.number : wanted < value.number;
  return possible ? "unknown" : "no";
}

function ordered(value: Value, comparator: "<" | "≤" | ">" | "≥", wanted: number): Judgement {
  if (value.kind !== "number") return "unknown";
  const { number, bound } = value;
  const holds = { "<": number < wanted, "≤": number <= wanted, ">": number > wanted, "≥": number >= wanted }[
    comparator
  ];
  if (bound === undefined) return yesNo(holds);
  // ">170" settles "≥ 150" and "> 170" but not "≥ 180".
  const upward = comparator === ">" || comparator === "≥";
  if (bound === "above") return upward ? (number >= wanted ? "yes" : "unknown") : number >= wanted ? "no" : "unknown";
  return upward ? (number <= wanted ? "no" : "unknown") : number <= wanted ? "yes" : "unknown";
}

function yesNo(holds: boolean): Judgement {
  return holds ? "yes" : "no";
}
