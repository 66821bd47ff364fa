/** Classes that share out a cohort: every case is in one of them, and in no other. */
export interface Family {
  readonly name: "sex" | "side" | "dominance" | "wound" | "treatment" | "rating" | "grade";
  readonly classes: readonly ReadonlySet<string>[];
}

const of = (name: Family["name"], ...classes: readonly string[]): Family => ({
  name,
  classes: classes.map((words) => new Set(words.split(" "))),
});

export const families: readonly Family[] = [
  of("sex", "boys boy male males men", "girls girl female females women"),
  of("side", "left left-sided", "right right-sided"),
  of("dominance", "dominant", "non-dominant nondominant"),
  of("wound", "closed", "open"),
  of(
    "treatment",
    "operatively operative surgically surgery operated",
    "non-operatively nonoperatively non-operative nonoperative conservatively conservative non-surgically nonsurgically non-surgical nonsurgical",
  ),
  of("rating", "excellent", "good", "fair satisfactory moderate", "poor bad unsatisfactory"),
  of("grade", "i 1", "ii 2", "iii 3", "iv 4", "v 5", "vi 6"),
];
