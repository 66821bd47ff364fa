import { fewestChanged, fewestMoved, type PairedVote, type VoteFindings } from "../../findings/vote/vote-findings.js";
import { counted, decimalText, percentText, pText } from "../number-text.js";

/** How the room moved, in sentences; a test only where ballots pair the answers and enough minds changed. */
export function shiftLines(vote: VoteFindings): string[] {
  const { before, after, paired } = vote;
  if (before.hands + before.yes + before.no === 0) return ["Nobody voted before, so there is nothing to compare with."];
  if (after.hands + after.yes + after.no === 0) return ["Nobody has voted again yet."];
  return [
    ...meanLine(vote),
    `Would do it: ${said(before)} before, ${said(after)} after.`,
    ...(paired === null
      ? ["Hands are not paired: nobody knows who changed, so the change is shown and not tested."]
      : [...changedLines(paired.would), ...movedLines(paired.expected)]),
  ];
}

const said = ({ yes, no }: { readonly yes: number; readonly no: number }): string =>
  yes + no === 0 ? "no answer" : `${yes} of ${yes + no}`;

function meanLine({ before, after, shift }: VoteFindings): string[] {
  if (before.mean === null || after.mean === null || shift === null) return [];
  const points = decimalText(Math.abs(shift) * 100, 0);
  const moved = points === "0" ? "no change to speak of" : `${points} points ${shift > 0 ? "higher" : "lower"}`;
  return [`The room expected ${percentText(before.mean, 1)} and now expects ${percentText(after.mean, 1)}: ${moved}.`];
}

function changedLines({ voters, changed, test }: PairedVote["would"]): string[] {
  const all = Object.values(voters).reduce((sum, list) => sum + list.length, 0);
  if (all === 0) return ["Nobody said twice whether to do it."];
  const [no, yes] = [voters.firstOnly.length, voters.secondOnly.length];
  const who = `${changed} of ${all} changed their mind: ${no} from yes to no, ${yes} from no to yes`;
  if ("because" in test)
    return [
      `${who}. Shown, not tested: with fewer than ${fewestChanged} changed minds no split of them gives p below 0.05.`,
    ];
  return [`${who} (exact McNemar ${pText(test.exact)}).`];
}

function movedLines({ voters, up, down, same, moved, test }: PairedVote["expected"]): string[] {
  if (voters === 0) return [];
  const who = `Of ${counted(voters, "voter")} who guessed twice, ${down} went down, ${up} up, ${same} stayed`;
  if ("because" in test)
    return [
      `${who}. Shown, not tested: ${moved} moved to another band, and the large-sample test asks for ${fewestMoved} (common practice).`,
    ];
  return [`${who} (four bands, Stuart-Maxwell ${pText(test.p)}).`];
}
