import type { GradedReadings } from "../../src/cases/readings/types.js";
import { gradeFindings, type GradeFindings } from "../../src/findings/agreement/grade-findings.js";
import type { AgreementOptions } from "../../src/findings/agreement/table-findings.js";

/** What is worked out beside the page. */
export interface GradeCalls {
  readonly grades: (given: {
    readonly graded: GradedReadings;
    readonly options: AgreementOptions;
  }) => Promise<GradeFindings>;
}

export const gradeCalls: GradeCalls = {
  grades: async ({ graded, options }) => Promise.resolve(gradeFindings(graded, options)),
};
