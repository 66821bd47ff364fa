import type { Rule } from "./types.js";

/** Every column that a rule reads, in order of appearance, each once. */
export function ruleColumns(rule: Rule): string[] {
  return [...new Set(columns(rule))];
}

function columns(rule: Rule): string[] {
  if ("all" in rule) return rule.all.flatMap(columns);
  if ("any" in rule) return rule.any.flatMap(columns);
  if ("not" in rule) return columns(rule.not);
  return [rule.column];
}
