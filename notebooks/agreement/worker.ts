import { gradeFindings } from "../../src/findings/agreement/grade-findings.js";
import type { WorkAsked, WorkDone } from "./work-apart.js";

self.addEventListener("message", ({ data }: MessageEvent<WorkAsked>) => {
  const answer = (done: WorkDone): void => self.postMessage(done);
  try {
    answer({ number: data.number, found: gradeFindings(data.graded, data.options) });
  } catch (error) {
    answer({ number: data.number, failed: (error as Error).message });
  }
});
