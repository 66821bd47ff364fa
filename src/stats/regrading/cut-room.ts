import { requireOptions } from "../guards.js";
import { gradePlace, requireCuts, requireValues } from "./cut-points.js";

/** How far a cut may go one way before the conclusion changes. */
export interface RoomOnOneSide {
  /** The measurement that the cut must reach (up) or fall below (down); null when nothing changes up to the next cut. */
  readonly changesAt: number | null;
  /** The conclusion there. */
  readonly becomes: string | null;
}

export interface CutRoom {
  readonly method: "every position of the cut between neighbouring measurements";
  readonly cuts: readonly number[];
  /** Place of the cut that is moved, 0 first. */
  readonly cut: number;
  readonly conclusion: string;
  readonly down: RoomOnOneSide;
  readonly up: RoomOnOneSide;
}

/**
 * How far one cut-point can move, the others held, before what is concluded changes.
 *
 * Grades change only where the cut passes a measurement, so trying each measured value is trying every position.
 *
 * @param values measurements, finite
 * @param options.cuts cut-points, rising
 * @param options.cut place of the one to move, 0 first
 * @param options.conclude the conclusion, in words, from the grade of each case (places, 0 first)
 * @throws RangeError when an argument is out of range; TypeError for unknown options
 * @example cutRoom([1, 2, 3, 4], { cuts: [2.5], cut: 0, conclude: (grades) => (grades[2] === 1 ? "high" : "low") }).up.changesAt // => 3
 */
export function cutRoom(
  values: readonly number[],
  options: {
    readonly cuts: readonly number[];
    readonly cut: number;
    readonly conclude: (grades: readonly number[]) => string;
  },
): CutRoom {
  requireOptions("cutRoom", options, ["cuts", "cut", "conclude"]);
  const { cuts, cut, conclude } = options;
  requireCuts("cutRoom", cuts);
  requireValues("cutRoom", values);
  if (!(Number.isInteger(cut) && cut >= 0 && cut < cuts.length))
    throw new RangeError(`cutRoom: cut must be 0 to ${cuts.length - 1}, got ${cut}`);
  const at = (position: number): string => conclude(values.map((value) => gradePlace(value, cuts.with(cut, position))));
  const here = cuts[cut]!;
  const conclusion = at(here);
  const [least, most] = [cuts[cut - 1] ?? -Infinity, cuts[cut + 1] ?? Infinity];
  const sorted = [...new Set(values)].toSorted((a, b) => a - b);
  const first = (positions: readonly number[], told: (position: number) => number): RoomOnOneSide => {
    const changesAt = positions.find((position) => at(position) !== conclusion);
    return changesAt === undefined
      ? { changesAt: null, becomes: null }
      : { changesAt: told(changesAt), becomes: at(changesAt) };
  };
  // Moving up, a case changes grade when the cut reaches it; moving down, as soon as the cut is below it.
  const above = sorted.filter((value) => value > here && value < most);
  const passed = sorted.filter((value) => value <= here && value > least).toReversed();
  const below = passed.map((value, k) => (value + Math.max(passed[k + 1] ?? -Infinity, least)) / 2);
  const downTo = below.map((position, k) => (Number.isFinite(position) ? position : passed[k]! - 1));
  return {
    method: "every position of the cut between neighbouring measurements",
    cuts,
    cut,
    conclusion,
    down: first(downTo, (position) => passed[downTo.indexOf(position)]!),
    up: first(above, (position) => position),
  };
}
