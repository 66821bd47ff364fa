import type { LedgerCase } from "../../ledger/types.js";
import type { MeasurementPlan } from "../../plan/types.js";
import { measurementError } from "../../stats/measurement-agreement/measurement-error.js";
import { withinSubjectSd } from "../../stats/measurement-agreement/within-subject-sd.js";
import type { Interval, NotEstimable } from "../../stats/types.js";
import type { ObserversError } from "./types.js";

/**
 * The observers' error: the one that the plan states, else that of the readings of all radiographs in the sheet. Excluded
 * and lost cases count here too: how well a radiograph is read does not hang on what became of the limb. Of an observer
 * who read more than once the first reading counts: repeats tell of one observer, not of two.
 */
export function observersError(
  cases: readonly LedgerCase[],
  { readings: observers = [], error }: Pick<MeasurementPlan, "readings" | "error">,
  level: number,
): ObserversError | NotEstimable {
  const found = observers.length === 0 ? null : ofReadings(cases, observers, level);
  if (error !== undefined)
    return {
      source: "plan",
      method: "standard error of measurement stated in the plan",
      estimate: error,
      interval: null,
      columns: [],
      observers: 0,
      radiographs: [],
      fromReadings: found?.estimate ?? null,
    };
  return (
    found ?? { estimate: null, because: "the plan names neither repeated readings of the measurement nor their error" }
  );
}

function ofReadings(
  cases: readonly LedgerCase[],
  observers: NonNullable<MeasurementPlan["readings"]>,
  level: number,
): ObserversError | NotEstimable {
  const columns = observers.flat();
  const told = (method: string, estimate: number, interval: Interval, used: readonly LedgerCase[]) =>
    estimate > 0
      ? ({
          source: "readings",
          method,
          estimate,
          interval,
          columns,
          observers: observers.length,
          radiographs: used.map(({ id }) => id),
          fromReadings: null,
        } as const)
      : { estimate: null, because: "all readings of a radiograph are the same, so that they show no error" };
  const complete = cases.filter((one) => firstReadings(one, observers).every((value) => value !== null));
  const twoWay =
    complete.length < 2 || observers.length < 2
      ? null
      : measurementError(
          complete.map((one) => firstReadings(one, observers)),
          { type: "agreement", level },
        );
  if (twoWay !== null && twoWay.estimate !== null)
    return told(
      "standard error of measurement, two-way random, absolute agreement",
      twoWay.estimate,
      twoWay.interval,
      complete,
    );
  const twice = cases.filter(({ readings }) => readings.filter((value) => value !== null).length >= 2);
  const within = withinSubjectSd(
    twice.map(({ readings }) => readings),
    { level },
  );
  if (within.estimate === null) return within;
  return told("within-subject standard deviation", within.estimate, within.interval, twice);
}

/** Each observer's first reading of a radiograph, null where there is none. */
function firstReadings(
  { readings }: LedgerCase,
  observers: NonNullable<MeasurementPlan["readings"]>,
): (number | null)[] {
  let at = 0;
  return observers.map((columns) => {
    const own = readings.slice(at, (at += [columns].flat().length));
    return own.find((value) => value !== null) ?? null;
  });
}
