import type { Role } from "../../src/cases/types.js";

/** What a role is called where a reader chooses one. */
export const roleWords: Readonly<Record<Role, string>> = {
  id: "number of the case",
  child: "number of the child",
  side: "side",
  sex: "sex",
  age: "age",
  grade: "grade",
  measurement: "measurement",
  firstTechnique: "technique tried first",
  finalTechnique: "technique that ended it",
  success: "success",
  complication: "complications",
  followUp: "follow-up",
  date: "date",
  operator: "who operated, names replaced by letters",
  rater: "reading of one rater",
  note: "note, not counted",
  identifier: "identifies a person, kept out",
  other: "something else",
};
