import type { ClubFindings } from "../../findings/club/club-findings.js";
import { radiographs } from "../../findings/club/prevalence-play.js";
import type { CardTechniques, NamedCount } from "../../findings/series/card-techniques.js";
import type { Interval } from "../../stats/types.js";
import { counted, decimalText, levelText, listText, percentText, pointsRangeText, pointsText } from "../number-text.js";
import { bandText, countText } from "../series/series-text.js";
import type { Screen } from "./screen.js";

/** "0.38", or why there is none. */
export function kappaText({ prevalencePlay: { kappa } }: ClubFindings): string {
  return kappa.estimate === null ? "not estimable" : decimalText(kappa.estimate, 2);
}

export function fair({ mixPlay, level, techniques, chosen }: ClubFindings): Screen {
  const [one, two] = [mixPlay.teams[0]!, mixPlay.teams[1]!];
  const [sameOne, sameTwo] = mixPlay.sameMix;
  const shares = `${one.name} succeeds in ${percentText(one.all.estimate, one.all.cases)} and ${two.name} in ${percentText(two.all.estimate, two.all.cases)}`;
  const verdict = mixPlay.misleads
    ? `${shares}, though ${two.name} is better in every grade it shares with ${one.name}.`
    : `${shares}; ${two.name} is better in every grade they share.`;
  const same =
    sameOne === null || sameTwo === null || sameOne === undefined || sameTwo === undefined
      ? `${two.name} has no case of one kind: with one mix the two cannot be compared.`
      : `With the mix of ${one.name}: ${percentText(sameOne, one.all.cases)} and ${percentText(sameTwo, two.all.cases)}.`;
  return {
    id: "fair",
    question: "Is it a fair comparison?",
    answer: [[verdict], [same], ...("because" in techniques ? [] : [[ownText(techniques, chosen!.card.name, level)]])],
    cautions: [["Two invented teams. Grade is one difference between patients; there may be others nobody recorded."]],
    tables: [
      {
        caption: "Two invented teams, by grade",
        head: ["Team", "I and II", "III and IV", "All"],
        rows: mixPlay.teams.map(({ name, low, high, all }) => [
          name,
          low === null ? "none" : `${countText(low)}, ${bandText(low)}`,
          high === null ? "none" : `${countText(high)}, ${bandText(high)}`,
          `${countText(all)}, ${bandText(all)}`,
        ]),
        notes: [`${levelText(level)} Wilson intervals, %.`],
      },
    ],
    notes: ["Move the slider from 0 to 40: within a grade nothing changes, the totals change places."],
    minutes: 2,
  };
}

/** The paper's own two techniques: all grades together, then within grades. */
function ownText({ first, second, crude, within, oneWay }: CardTechniques, name: string, level: number): string {
  const share = ({ name: technique, successes, trials }: NamedCount): string =>
    `${technique} ${successes} of ${trials} (${percentText(successes / trials, trials)})`;
  const range = (interval: Interval | null): string =>
    interval === null ? "" : ` (${levelText(level)} CI ${pointsRangeText(interval)})`;
  const alone = oneWay.length === 0 ? "" : `, grade ${listText(oneWay)} aside`;
  const inside =
    "because" in within
      ? `within grades it cannot be compared: ${within.because}`
      : `within grades it is ${pointsText(within.difference)}${range(within.interval)}${alone}`;
  return `${name}: ${share(first)}, ${share(second)}: a difference of ${pointsText(crude.difference)} points${range(crude.interval)}; ${inside}.`;
}

export function grading(findings: ClubFindings): Screen {
  const { bothHigh, bothLow, differ, agreement, kappa } = findings.prevalencePlay;
  return {
    id: "grading",
    question: "Can they grade?",
    answer: [
      [
        `Two observers agree on ${countText(agreement)} radiographs (${percentText(agreement.estimate, agreement.cases)}), both calling ${bothHigh} high.`,
      ],
      [
        kappa.estimate === null
          ? `Kappa is not estimable: ${kappa.because}.`
          : `Kappa is ${kappaText(findings)}: the agreement beyond what their use of the grades gives by chance.`,
      ],
    ],
    cautions: [["Two invented observers. A low kappa with few high grades says little of how well they grade."]],
    tables: [
      {
        caption: `${radiographs} radiographs by two invented observers`,
        head: ["Both high", "Both low", "They differ", "Kappa"],
        rows: [[String(bothHigh), String(bothLow), String(differ), kappaText(findings)]],
        notes: [],
      },
    ],
    notes: [
      `Move the slider to 1: ${counted(differ, "disagreement")} as before, and kappa falls.`,
      "Does the paper print the cross-table? Without it neither number can be judged.",
    ],
    minutes: 2,
  };
}
