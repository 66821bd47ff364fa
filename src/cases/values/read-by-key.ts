import type { CodeKey } from "../table/find-keys.js";
import type { Answers, RawCell, Role } from "../types.js";
import { readers } from "./readers.js";
import { ask, missing, plainFacts, type ColumnFacts, type Reading } from "./reading.js";

export const keyHolds = "as the key says";
const keyFails = "it is not for this column";

/** Roles whose cells may be codes that no key would be needed to doubt. */
const coded: ReadonlySet<Role> = new Set(["firstTechnique", "finalTechnique", "complication"]);

/**
 * A cell that the sheet's own key explains: read as its meaning once a person has said that the key holds for the column;
 * undefined where the key has nothing to say.
 */
export function readByKey(
  text: string,
  role: Role,
  facts: ColumnFacts,
  cell: RawCell,
  answers: Answers,
): Reading | undefined {
  const meaning = facts.key?.meanings.get(text.toLowerCase());
  if (meaning === undefined) return undefined;
  const plain = readers[role](text, facts, cell);
  if (!plain.asks && !coded.has(role) && role !== "other") return undefined;
  const id = `${facts.name} | key`;
  const answer = Object.hasOwn(answers, id) ? answers[id]!.trim().toLowerCase() : undefined;
  if (answer === keyFails) return undefined;
  const { key: _, ...rest } = facts;
  const meant = readers[role](meaning, { ...rest, values: role === "other" ? "text" : rest.values }, { text: meaning });
  if (answer === keyHolds) return meant.asks ? meant : { value: meant.value, why: `the key says ${meaning}` };
  const says = [...facts.key!.meanings].map(([code, word]) => `${code} = ${word}`).join(", ");
  const rows = facts.key!.rows;
  return ask("key", "", `the key in row ${rows[0]} says ${says}: does it hold for "${facts.name}"?`, [
    { label: keyHolds, value: meant.asks ? missing("unknown") : meant.value },
    { label: keyFails, value: missing("unknown") },
  ]);
}

const techniqueWords = /closed|open|wire|pin|plate|perc|manip|mua|cast|sling|nail|assist|conserv|surg|non-?op/i;
const outcomeWords = /good|fair|poor|excellent|satisf|success|fail|yes|no\b|ok|heal|unit/i;

/** Whether the meanings of a key are what a column of the role holds. */
export function keySuits({ meanings }: CodeKey, role: Role): boolean {
  const words = [...meanings.values()];
  if (role === "firstTechnique" || role === "finalTechnique") return words.some((word) => techniqueWords.test(word));
  if (role === "success") return words.some((word) => outcomeWords.test(word));
  if (role === "complication") return words.some((word) => !techniqueWords.test(word) && !outcomeWords.test(word));
  return words.filter((word) => !readers[role](word, plainFacts, { text: word }).asks).length * 2 >= words.length;
}
