import * as v from "valibot";
import { SheetError } from "../../cases/sheet-error.js";
import { caseSeriesItems, indexItems, scores, verdicts, type Appraisal, type Periods } from "../appraisal/appraisal.js";
import { cardSchema, fault } from "../series/card-schema.js";
import type { PaperCard } from "../series/paper-card.js";
import { namedOnce } from "../series/read-cards.js";
import { expectedSteps, type Ballot, type HandCount, type Vote } from "../vote/vote.js";

/** An evening as it is saved: everything typed, nothing computed. */
export interface EveningFile {
  readonly cards: readonly PaperCard[];
  /** Printed under the pictures of the cards. */
  readonly note: string;
  readonly series: string | null;
  readonly grade: string | null;
  readonly text: string;
  readonly takeHome: string;
  /** Both ways of voting are kept, the one in use named. */
  readonly votes: {
    readonly kind: Vote["kind"];
    readonly before: HandCount;
    readonly after: HandCount;
    readonly ballots: readonly Ballot[];
  };
  readonly appraisal: Appraisal;
  readonly periods: Periods;
}

const whole = (most: number) =>
  v.pipe(
    v.number(),
    v.integer("must be a whole number"),
    v.minValue(0, "must be at least 0"),
    v.maxValue(most, `must be at most ${most}`),
  );
const hands = v.strictObject({
  expected: v.pipe(v.array(whole(999)), v.length(expectedSteps.length, `must hold ${expectedSteps.length} counts`)),
  yes: whole(999),
  no: whole(999),
});
const answer = v.nullable(
  v.strictObject({ step: v.nullable(whole(expectedSteps.length - 1)), would: v.nullable(v.boolean()) }),
);
const period = v.nullable(v.strictObject({ from: whole(9999), to: whole(9999) }));
const answered = <T extends readonly string[]>(choices: T) =>
  v.strictObject({
    verdict: v.picklist(["", ...choices], `must be one of ${choices.join(", ")}, or empty`),
    page: v.string(),
    quotation: v.string(),
  });
const items = <T extends readonly string[], C extends readonly string[]>(names: T, choices: C) =>
  Object.fromEntries(names.map((name) => [name, v.optional(answered(choices))]));
const schema = v.strictObject({
  evening: v.literal(1, "must be 1"),
  note: v.string(),
  cards: v.array(cardSchema),
  series: v.nullable(v.string()),
  grade: v.nullable(v.string()),
  text: v.string(),
  takeHome: v.string(),
  votes: v.strictObject({
    kind: v.picklist(["hands", "ballots"], "must be hands or ballots"),
    before: hands,
    after: hands,
    ballots: v.pipe(
      v.array(v.strictObject({ voter: whole(9999), before: answer, after: answer })),
      v.check(
        (ballots) => new Set(ballots.map(({ voter }) => voter)).size === ballots.length,
        "must hold one ballot a voter",
      ),
    ),
  }),
  appraisal: v.strictObject({ ...items(indexItems, scores), ...items(caseSeriesItems, verdicts) }),
  periods: v.strictObject({ first: period, second: period }),
});

/** An evening as a file. */
export function eveningJson(evening: EveningFile): string {
  return `${JSON.stringify({ evening: 1, ...evening }, null, 2)}\n`;
}

/**
 * A saved evening.
 * @returns null when the file is none, but perhaps cards or counts
 * @throws SheetError with every fault, named by its place
 */
export function readEvening(bytes: Uint8Array, file: string): EveningFile | null {
  let parsed: unknown;
  try {
    parsed = JSON.parse(new TextDecoder().decode(bytes));
  } catch {
    return null;
  }
  if (typeof parsed !== "object" || parsed === null || !Object.hasOwn(parsed, "evening")) return null;
  const result = v.safeParse(schema, parsed);
  if (!result.success) throw new SheetError(file, result.issues.map(fault));
  namedOnce(result.output.cards, file);
  const { evening: _, ...rest } = result.output;
  return rest as EveningFile;
}
