/** What a column of success tells of, by the words of its heading: the reduction, the motion, or else the position. */
export function kindOfSuccess(name: string): "technical" | "position" | "motion" {
  if (/motion|elev|range|rom\b|function/i.test(name)) return "motion";
  return /reduc|technical/i.test(name) ? "technical" : "position";
}
