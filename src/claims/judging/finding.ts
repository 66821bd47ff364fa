import type { Light } from "../claim.js";

/** One check of one printed number. */
export interface Finding {
  readonly light: Light;
  readonly because: string;
  readonly reproducedBy: readonly string[];
}

/** Several checks make one verdict: one failure fails; one check that holds suffices if nothing fails. */
export function together(findings: readonly Finding[]): {
  readonly arithmetic: Light;
  readonly because: string;
  readonly reproducedBy: readonly string[];
} {
  const [only] = findings;
  if (only && findings.length === 1)
    return { arithmetic: only.light, because: only.because, reproducedBy: only.reproducedBy };
  const failing = findings.filter(({ light }) => light === "fails");
  const doubtful = findings.filter(({ light }) => light === "cannot be checked");
  const rest = findings.filter(({ light }) => light === "holds");
  const arithmetic =
    failing.length > 0 ? "fails" : doubtful.length > 0 && rest.length === 0 ? "cannot be checked" : "holds";
  const shown = failing.length > 0 ? failing : [...rest, ...doubtful];
  return {
    arithmetic,
    because: shown.map(({ because }) => because).join(" "),
    reproducedBy: [...new Set(findings.flatMap(({ reproducedBy }) => reproducedBy))],
  };
}
