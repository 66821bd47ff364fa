import { callApart } from "../../src/notebook/call-apart.js";
import type { GradeWork } from "./agreement.js";
import type { GradeCalls } from "./grade-calls.js";
// oxlint-disable-next-line import/default -- the builder makes the export of a worker
import ResamplingWorker from "./worker.js?worker&inline";

/** Resampling beside the page, so that thousands of radiographs do not hold it up. */
export function workApart(): GradeWork {
  const { call } = callApart<GradeCalls>(
    () => new ResamplingWorker(),
    async () => (await import("./grade-calls.js")).gradeCalls,
  );
  return (graded, options) => call("grades", { graded, options });
}
