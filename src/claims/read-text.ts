import { linkSentence, type LinkedSentence } from "./reading/link.js";
import { alsoNamed, type Named } from "./reading/missing-wholes.js";
import { readSentence } from "./reading/read-sentence.js";
import { crossTableOfRows } from "./reading/read-tables.js";
import { type NamedTests, testsNamed } from "./reading/tests-named.js";
import { blocksOf } from "./text/blocks.js";
import { sentencesOf } from "./text/sentences.js";
import type { Span } from "./text/token.js";

/** Everything read from a text, sentence by sentence. */
export interface TextReading {
  readonly sentences: readonly LinkedSentence[];
  readonly tables: readonly (readonly (readonly number[])[])[];
  /** The tests that sentences without a p value name, as a methods section does. */
  readonly methods: NamedTests | null;
  readonly notUnderstood: readonly (Span & { readonly because: string })[];
}

/** About fifteen papers; more text is set aside, said so, and costs nothing. */
const mostTokens = 120_000;

/** Reads the numbers of a text. The time grows with its length, up to a limit that is reported. */
export function readText(text: string): TextReading {
  const sentences: LinkedSentence[] = [];
  const notUnderstood: (Span & { because: string })[] = [];
  let named: Named = { wholes: [], parts: [], groups: [], left: [] };
  const methods: NamedTests[] = [];
  let tokens = 0;
  for (const block of blocksOf(text)) {
    if (tokens > mostTokens) {
      const because = `the text is longer than ${mostTokens} words and marks: check the rest on its own`;
      notUnderstood.push({
        text: `${text.slice(block.start, block.start + 60).trim()} ...`,
        start: block.start,
        end: text.length,
        because,
      });
      break;
    }
    for (const sentence of sentencesOf(text, block)) {
      tokens += sentence.tokens.length;
      const reading = readSentence(sentence);
      const linked = linkSentence(reading, named);
      sentences.push(linked);
      named = alsoNamed(named, reading);
      const tests = linked.pValues.length === 0 ? testsNamed(sentence.tokens) : null;
      if (tests && tests.families.length > 0) methods.push(tests);
      for (const token of reading.leftovers)
        notUnderstood.push({
          text: text.slice(token.start, token.end),
          start: token.start,
          end: token.end,
          because: "a number that no rule reads",
        });
    }
  }
  return { sentences, tables: crossTables(sentences), methods: methodsOf(methods), notUnderstood };
}

/** One family of tests named throughout is taken as named for every p value; several leave each open. */
function methodsOf(named: readonly NamedTests[]): NamedTests | null {
  const families = [...new Set(named.flatMap((tests) => tests.families))];
  const only =
    named.length > 0 &&
    (families.every((family) => family === "fisher") ||
      families.every((family) => ["chi-square", "yates", "n-1"].includes(family)));
  const first = named[0];
  return only && first && named.every((tests) => tests.other === null && !tests.means && !tests.trend)
    ? { ...first, families }
    : null;
}

function crossTables(sentences: readonly LinkedSentence[]): number[][][] {
  const tables: number[][][] = sentences.flatMap(({ reading }) =>
    reading.crossTables.map(({ rows }) => rows.map((row) => [...row])),
  );
  let run: number[][] = [];
  for (const { reading } of [...sentences, null].map((sentence) => sentence ?? { reading: null })) {
    const cells = reading?.row ? reading.facts.flatMap((fact) => (fact.kind === "part" ? [fact.value] : [])) : [];
    if (reading?.row && cells.length > 1 && (run.length === 0 || run[0]!.length === cells.length)) run.push(cells);
    else {
      const table = crossTableOfRows(run);
      if (table) tables.push(table);
      run = reading?.row && cells.length > 1 ? [cells] : [];
    }
  }
  return tables;
}
