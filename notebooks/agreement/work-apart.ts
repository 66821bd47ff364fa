import type { GradedReadings } from "../../src/cases/readings/types.js";
import { gradeFindings, type GradeFindings } from "../../src/findings/agreement/grade-findings.js";
import type { AgreementOptions } from "../../src/findings/agreement/table-findings.js";
import type { GradeWork } from "./agreement.js";
// oxlint-disable-next-line import/default -- the builder makes the export of a worker
import ResamplingWorker from "./worker.js?worker&inline";

export interface WorkAsked {
  readonly number: number;
  readonly graded: GradedReadings;
  readonly options: AgreementOptions;
}
export interface WorkDone {
  readonly number: number;
  readonly found?: GradeFindings;
  readonly failed?: string;
}

/** Resampling beside the page, so that thousands of radiographs do not hold it up; on the page where workers are refused. */
export function workApart(): GradeWork {
  const waiting = new Map<number, { done: (found: GradeFindings) => void; failed: (error: Error) => void }>();
  let asked = 0;
  let worker: Worker | null = null;
  try {
    worker = new ResamplingWorker();
    worker.addEventListener("message", ({ data }: MessageEvent<WorkDone>) => {
      const one = waiting.get(data.number);
      waiting.delete(data.number);
      if (data.found) one?.done(data.found);
      else one?.failed(new Error(data.failed));
    });
    worker.addEventListener("error", () => {
      worker = null;
      for (const { failed } of waiting.values())
        failed(new Error("resampling apart from the page is not possible here"));
      waiting.clear();
    });
  } catch {
    worker = null;
  }
  return (graded, options) => {
    if (worker === null) return Promise.resolve(gradeFindings(graded, options));
    const number = ++asked;
    const answer = new Promise<GradeFindings>((done, failed) => waiting.set(number, { done, failed }));
    worker.postMessage({ number, graded, options } satisfies WorkAsked);
    // A worker that dies hands the work back to the page.
    return answer.catch((error: Error) => {
      if (worker === null) return gradeFindings(graded, options);
      throw error;
    });
  };
}
