import { mcNemar, type McNemarResult } from "../../stats/paired/mc-nemar.js";
import type { Pairs } from "../../stats/paired/pairs.js";
import { stuartMaxwell, type StuartMaxwellResult } from "../../stats/paired/stuart-maxwell.js";
import type { NotEstimable } from "../../stats/types.js";
import { expectedBands, expectedSteps, noHands, type Answer, type HandCount, type Vote } from "./vote.js";

/** With fewer changed minds no split of them gives an exact two-sided p below 0.05: 2 x 0.5^5 = 0.0625. */
export const fewestChanged = 6;
/** The Stuart-Maxwell test is a large-sample one; common practice, no source. */
export const fewestMoved = 10;

/** One poll: hands for each step, and what the room expects. */
export interface Poll extends HandCount {
  /** Hands for any step. */
  readonly hands: number;
  /** Mean of the steps, a fraction. */
  readonly mean: number | null;
}

/** What numbered ballots tell more than hands. */
export interface PairedVote {
  /** Voters who answered "would you do it" twice, by what they said; each voter's number. */
  readonly would: {
    readonly voters: Readonly<Record<keyof Pairs, readonly number[]>>;
    readonly changed: number;
    readonly test: McNemarResult | NotEstimable;
  };
  /** Voters who gave a step twice. */
  readonly expected: {
    readonly voters: number;
    readonly up: number;
    readonly down: number;
    readonly same: number;
    /** Rows before, columns after, in the bands fixed beforehand. */
    readonly table: readonly (readonly number[])[];
    readonly moved: number;
    readonly test: StuartMaxwellResult | NotEstimable;
  };
}

export interface VoteFindings {
  readonly before: Poll;
  readonly after: Poll;
  /** Mean after less mean before, of all hands. */
  readonly shift: number | null;
  /** null when hands were counted: nobody knows whose is whose. */
  readonly paired: PairedVote | null;
}

/**
 * Both polls and the shift between them; tested only where ballots pair the answers and enough minds changed.
 * @throws RangeError when a count is no whole number of at least 0, a step is not one of the list or a voter votes twice
 */
export function voteFindings(vote: Vote): VoteFindings {
  checkVote(vote);
  const [before, after] =
    vote.kind === "hands"
      ? [vote.before, vote.after]
      : [handsOf(vote.ballots.map((one) => one.before)), handsOf(vote.ballots.map((one) => one.after))];
  const polls = { before: poll(before), after: poll(after) };
  const shift = polls.before.mean === null || polls.after.mean === null ? null : polls.after.mean - polls.before.mean;
  return { ...polls, shift, paired: vote.kind === "hands" ? null : paired(vote.ballots) };
}

function poll(count: HandCount): Poll {
  const hands = count.expected.reduce((sum, n) => sum + n, 0);
  const total = count.expected.reduce((sum, n, i) => sum + n * i, 0);
  // Steps are tenths: the sum is a whole number until here.
  return { ...count, hands, mean: hands === 0 ? null : total / (hands * (expectedSteps.length - 1)) };
}

function handsOf(answers: readonly (Answer | null)[]): HandCount {
  const given = answers.filter((answer) => answer !== null);
  return {
    expected: noHands.expected.map((_, step) => given.filter((one) => one.step === step).length),
    yes: given.filter(({ would }) => would === true).length,
    no: given.filter(({ would }) => would === false).length,
  };
}

function paired(ballots: Extract<Vote, { kind: "ballots" }>["ballots"]): PairedVote {
  const twice = ballots.flatMap(({ voter, before, after }) => (before && after ? [{ voter, before, after }] : []));
  const said = (first: boolean, second: boolean): number[] =>
    twice.flatMap(({ voter, before, after }) => (before.would === first && after.would === second ? [voter] : []));
  const voters = {
    both: said(true, true),
    firstOnly: said(true, false),
    secondOnly: said(false, true),
    neither: said(false, false),
  };
  const changed = voters.firstOnly.length + voters.secondOnly.length;
  const steps = twice.flatMap(({ before, after }) =>
    before.step === null || after.step === null ? [] : [[before.step, after.step] as const],
  );
  return { would: { voters, changed, test: wouldTest() }, expected: expected(steps) };

  function wouldTest(): McNemarResult | NotEstimable {
    if (changed < fewestChanged) return { estimate: null, because: "too few changed their mind" };
    const { both, firstOnly, secondOnly, neither } = voters;
    return mcNemar({
      both: both.length,
      firstOnly: firstOnly.length,
      secondOnly: secondOnly.length,
      neither: neither.length,
    });
  }
}

function expected(steps: readonly (readonly [number, number])[]): PairedVote["expected"] {
  const bandOf = (step: number): number => expectedBands.findIndex(({ last }) => step <= last);
  const table = expectedBands.map((_, row) =>
    expectedBands.map((__, column) => steps.filter(([a, b]) => bandOf(a) === row && bandOf(b) === column).length),
  );
  const moved = steps.filter(([a, b]) => bandOf(a) !== bandOf(b)).length;
  return {
    voters: steps.length,
    up: steps.filter(([a, b]) => b > a).length,
    down: steps.filter(([a, b]) => b < a).length,
    same: steps.filter(([a, b]) => a === b).length,
    table,
    moved,
    test: moved < fewestMoved ? { estimate: null, because: "too few moved to another band" } : stuartMaxwell(table),
  };
}

function checkVote(vote: Vote): void {
  if (vote.kind === "hands") {
    for (const { expected: hands, yes, no } of [vote.before, vote.after]) {
      if (hands.length !== expectedSteps.length)
        throw new RangeError(`voteFindings: there must be ${expectedSteps.length} steps, got ${hands.length}`);
      const wrong = [...hands, yes, no].find((n) => !(Number.isSafeInteger(n) && n >= 0));
      if (wrong !== undefined)
        throw new RangeError(`voteFindings: hands must be a whole number of at least 0, got ${wrong}`);
    }
    return;
  }
  const numbers = vote.ballots.map(({ voter }) => voter);
  const again = numbers.find((voter, i) => numbers.indexOf(voter) !== i);
  if (again !== undefined) throw new RangeError(`voteFindings: each voter must have one ballot, got ${again} twice`);
  for (const { before, after } of vote.ballots)
    for (const answer of [before, after]) {
      const step = answer?.step ?? null;
      if (step !== null && !(Number.isInteger(step) && step >= 0 && step < expectedSteps.length))
        throw new RangeError(`voteFindings: a step must be from 0 to ${expectedSteps.length - 1}, got ${step}`);
    }
}
