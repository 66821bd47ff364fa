import type { SentenceReading } from "../reading/read-sentence.js";
import { type Total, total } from "./total.js";

/** "14/22/9/5 in the closed group (n = 50)" under "grade (I/II/III/IV)": figures by class against the group's number. */
export function slashLists(reading: SentenceReading): Total[] {
  const chains = chainsIn(reading);
  const labels = chains.filter(({ numbers }) => numbers === null).map(({ length }) => length);
  return chains.flatMap(({ from, to, numbers, length }, i): Total[] => {
    if (!numbers) return [];
    const until = chains[i + 1]?.from ?? reading.tokens.length;
    const whole = reading.facts.find(
      (fact) => fact.kind === "whole" && fact.from >= to && fact.from < Math.min(until, to + 10) && reading.tokens[fact.from - 1]?.text === "=",
    );
    if (whole?.kind !== "whole" || numbers.some((value) => !Number.isInteger(value))) return [];
    const result = total(from, whole.to, whole.value, numbers, labels.includes(length));
    return result.light === "cannot be checked" ? [] : [result];
  });
} // prettier-ignore

interface Chain {
  readonly from: number;
  readonly to: number;
  readonly length: number;
  /** null for a chain of names. */
  readonly numbers: readonly number[] | null;
}

/** Runs of at least three words or numbers with slashes between. */
function chainsIn({ tokens, cursor }: SentenceReading): Chain[] {
  const chains: Chain[] = [];
  for (let i = 0; i < tokens.length; i++) {
    let to = i + 1;
    while (tokens[to]?.text === "/" && tokens[to + 1] && tokens[to + 1]!.kind === tokens[i]!.kind) to += 2;
    const length = (to - i + 1) / 2;
    if (length < 3) continue;
    const items = tokens.slice(i, to).filter((_, at) => at % 2 === 0);
    const free = items.every(({ kind }, at) => kind === "number" && !cursor.taken[i + 2 * at]);
    chains.push({ from: i, to, length, numbers: free ? items.map(({ number }) => number!.value) : null });
    i = to - 1;
  }
  return chains;
}
