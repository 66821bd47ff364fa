import type { SentenceReading } from "../reading/read-sentence.js";
import { wordedShares } from "../reading/worded-shares.js";
import type { ToldRatio } from "./judge-ratio.js";
import { fixed } from "./number-text.js";

/** How far a share told in words may lie from its count, in points: common practice, no source. */
const [room, looseRoom] = [4.5, 8];

/** Shares told in words against the count in their bracket: "a third (19 of 42)" is 45%. */
export function judgeWorded(reading: SentenceReading): ToldRatio[] {
  return wordedShares(reading).map(({ from, to, words, share, loose, count }) => {
    const value = (100 * count.successes) / count.trials;
    const near = Math.abs(value - 100 * share) <= (loose ? looseRoom : room);
    const sum = `${count.successes} of ${count.trials} is ${fixed(value, 0)}%`;
    if (near) return { from, to, value, light: "holds", because: `${sum}, ${words}.`, reproducedBy: ["count over total"] };
    return { from, to, value, light: "fails", because: `${sum}, not ${words}. Which is right?`, reproducedBy: [] };
  }); // prettier-ignore
}
