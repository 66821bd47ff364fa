import type { Role } from "../types.js";
import { readAge } from "./read-age.js";
import { readComplications } from "./read-complications.js";
import { readDate } from "./read-date.js";
import { readFollowUp } from "./read-follow-up.js";
import { readGrade } from "./read-grade.js";
import { readMeasurement } from "./read-measurement.js";
import { readOperator } from "./read-operator.js";
import { readOther, readPlain } from "./read-other.js";
import { readSex } from "./read-sex.js";
import { readSide } from "./read-side.js";
import { readTechnique } from "./read-technique.js";
import { readYesNo } from "./read-yes-no.js";
import type { Reader } from "./reading.js";

/** How the cells of each role are read. */
export const readers: Readonly<Record<Role, Reader>> = {
  id: readPlain,
  child: readPlain,
  side: readSide,
  sex: readSex,
  age: readAge,
  grade: readGrade,
  measurement: readMeasurement,
  firstTechnique: readTechnique,
  finalTechnique: readTechnique,
  success: readYesNo,
  complication: readComplications,
  followUp: readFollowUp,
  date: readDate,
  operator: readOperator,
  rater: readOther,
  note: readPlain,
  identifier: readPlain,
  other: readOther,
};
