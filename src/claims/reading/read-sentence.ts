import type { Sentence } from "../text/sentences.js";
import type { Token } from "../text/token.js";
import { type Cursor, cursorOf } from "./cursor.js";
import { inferredRatios } from "./inferred-ratios.js";
import type { Fact } from "./facts.js";
import { readCounts } from "./read-counts.js";
import { readEffects } from "./read-effects.js";
import { readIntervals } from "./read-intervals.js";
import { readKappas } from "./read-kappas.js";
import { readLimits } from "./read-limits.js";
import { readMeans } from "./read-means.js";
import { readParts } from "./read-parts.js";
import { readPercents } from "./read-percents.js";
import { readPValues } from "./read-p-values.js";
import { readShares } from "./read-shares.js";
import { readStatistics } from "./read-statistics.js";
import { type CrossTable, readCrossTables } from "./read-tables.js";
import { takeLabels } from "./take-labels.js";
import { countsOthers, measures } from "./units.js";

/** What was read in one sentence, in order of appearance. */
export interface SentenceReading {
  readonly tokens: readonly Token[];
  readonly cursor: Cursor;
  readonly row: boolean;
  readonly facts: readonly Fact[];
  readonly crossTables: readonly CrossTable[];
  /** Numbers that no reader understood. */
  readonly leftovers: readonly Token[];
}

/** Reads the numbers of one sentence or table row. The order matters: each reader takes the tokens it has used. */
export function readSentence(sentence: Sentence): SentenceReading {
  const cursor = cursorOf(sentence.tokens, sentence.row);
  const base = { tokens: sentence.tokens, cursor, row: sentence.row };
  if (!sentence.tokens.some((token) => token.number || token.text === "ns"))
    return { ...base, facts: [], crossTables: [], leftovers: [] };
  takeLabels(cursor);
  const crossTables = readCrossTables(cursor);
  const first: Fact[] = [
    ...readLimits(cursor),
    ...readIntervals(cursor),
    ...readPValues(cursor),
    ...readKappas(cursor),
    ...readStatistics(cursor),
    ...readEffects(cursor),
  ];
  const counts = readCounts(cursor);
  const intervals = first.filter((fact) => fact.kind === "interval");
  const facts: Fact[] = [
    ...first,
    ...counts,
    ...readMeans(cursor),
    ...readShares(
      cursor,
      counts.filter((fact) => fact.kind === "count"),
    ),
    ...readPercents(cursor),
    ...inferredRatios(cursor, intervals),
    ...readParts(cursor),
  ].toSorted((a, b) => a.from - b.from);
  const leftovers = sentence.tokens.filter((token, i) => token.number && !cursor.taken[i] && !known(cursor, i));
  return { ...base, facts, crossTables, leftovers };
}

/** Measurements, numbers of observers and groups, and "one" are read but state nothing to check. */
const known = (cursor: Cursor, i: number): boolean =>
  measures(cursor, i + 1) ||
  countsOthers(cursor, i + 1) ||
  (cursor.tokens[i]!.spelled && cursor.tokens[i]!.number!.value === 1);
