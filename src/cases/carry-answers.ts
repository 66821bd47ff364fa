import type { VersionChanges } from "./compare-versions.js";
import type { Answers, CaseTable } from "./types.js";

/** Answers for the new version: ids follow a renamed column; answers to questions that no longer exist are left out. */
export function carryAnswers(answers: Answers, changes: VersionChanges, after: CaseTable): Answers {
  const open = new Set(after.questions.map(({ id }) => id));
  const carried = Object.entries(answers).map(([id, answer]): [string, string] => {
    const name = changes.renamed.find(({ before }) => id.startsWith(`${before} | `));
    return [name ? `${name.after}${id.slice(name.before.length)}` : id, answer];
  });
  return Object.fromEntries(carried.filter(([id]) => open.has(id) || open.has(id.replace(/ @ [^@]*$/, ""))));
}
