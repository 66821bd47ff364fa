import type { NotEstimable } from "../../stats/types.js";
import type { PaperCard } from "../series/paper-card.js";
import { seriesFindings, type BandedRate, type CardFindings, type SeriesFindings } from "../series/series-findings.js";
import { cardTechniques, type CardTechniques } from "../series/card-techniques.js";
import type { Tipping } from "../tipping.js";
import { belief, type BeliefFindings } from "../vote/belief.js";
import type { Vote } from "../vote/vote.js";
import { voteFindings, type VoteFindings } from "../vote/vote-findings.js";
import { cardTipping } from "./card-tipping.js";
import { gradeMixPlay, type GradeMixPlay } from "./grade-mix-play.js";
import { lostPlay, type LostPlay } from "./lost-play.js";
import { prevalencePlay, type PrevalencePlay } from "./prevalence-play.js";
import { widthPlay, type WidthPlay } from "./width-play.js";

/** Where the sliders stand. */
export interface Sliders {
  /** Cases of a high grade in the second team. */
  readonly high: number;
  readonly cases: number;
  readonly bothHigh: number;
  /** null: as many as the paper states, none when it does not. */
  readonly lost: number | null;
  /** How many of them were treated by the first technique; null: their share of the followed. */
  readonly lostFirst: number | null;
}

export const firstSliders: Sliders = { high: 30, cases: 20, bothHigh: 28, lost: null, lostFirst: null };

export interface ClubOptions {
  /** Name of the series the evening is about; the first when there is none of the name. */
  readonly series: string | null;
  /** The grade the room is asked about; all grades when null. */
  readonly grade: string | null;
  readonly beliefWidth: BeliefFindings["width"];
  readonly sliders: Sliders;
  readonly level: number;
  /** Further cases that the second screen looks at. */
  readonly next: number;
}

/** Everything an evening shows, unrounded. */
export interface ClubFindings {
  readonly level: number;
  readonly series: SeriesFindings;
  /** null when there is no card. */
  readonly chosen: CardFindings | null;
  /** The grade asked about; null for all. */
  readonly grade: string | null;
  /** The paper's count of what the room is asked. */
  readonly asked: BandedRate | NotEstimable;
  readonly vote: VoteFindings;
  readonly belief: BeliefFindings;
  readonly mixPlay: GradeMixPlay;
  readonly widthPlay: WidthPlay;
  readonly prevalencePlay: PrevalencePlay;
  readonly lostPlay: LostPlay;
  /** The paper's own two techniques. */
  readonly techniques: CardTechniques | NotEstimable;
  /** Their comparison with the lost counted in every possible way. */
  readonly tipping: Tipping | NotEstimable;
}

export function clubFindings(cards: readonly PaperCard[], vote: Vote, options: ClubOptions): ClubFindings {
  const { level, sliders, next } = options;
  const series = seriesFindings(cards, { level, next });
  const chosen = series.series.find(({ card }) => card.name === options.series) ?? series.series[0] ?? null;
  const grade = chosen?.grades.some((held) => held.grade === options.grade) ? options.grade : null;
  const asked = askedOf(chosen, grade);
  const count = asked.estimate === null ? null : { successes: asked.successes, trials: asked.cases };
  const polls = voteFindings(vote);
  const lost = sliders.lost ?? chosen?.card.lost ?? 0;
  const techniques = chosen === null ? noSeries : cardTechniques(chosen.card, level);
  return {
    level,
    series,
    chosen,
    grade,
    asked,
    vote: polls,
    belief: belief(polls.before, count, options.beliefWidth),
    mixPlay: gradeMixPlay(sliders.high, level),
    widthPlay: widthPlay(sliders.cases, level),
    prevalencePlay: prevalencePlay(sliders.bothHigh, level),
    lostPlay: lostPlay(chosen?.crude ?? noSeries, lost, level),
    techniques,
    tipping:
      "because" in techniques ? techniques : cardTipping(techniques, { lost, ofFirst: sliders.lostFirst, level }),
  };
}

const noSeries: NotEstimable = { estimate: null, because: "no series is chosen" };

function askedOf(chosen: CardFindings | null, grade: string | null): ClubFindings["asked"] {
  if (chosen === null) return noSeries;
  if (grade === null) return chosen.crude;
  return chosen.grades.find((held) => held.grade === grade)!.rate;
}
