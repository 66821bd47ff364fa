import { type Cursor, textAt } from "./cursor.js";

/** Nouns that cases are counted in, with their singular; what belongs together is one unit. */
const units: Record<string, string> = {};
for (const [unit, nouns] of Object.entries({
  child:
    "child children patient patients adolescent adolescents boy boys girl girls subject subjects participant participants individual individuals people person persons man men woman women teenager teenagers athlete athletes volunteer volunteers infant infants adult adults",
  limb: "limb limbs arm arms shoulder shoulders humerus humeri elbow elbows hip hips knee knees leg legs wrist wrists forearm forearms ankle ankles foot feet clubfoot clubfeet hand hands",
  fracture: "fracture fractures bone bones injury injuries lesion lesions",
  case: "case cases",
  radiograph:
    "radiograph radiographs film films image images x-ray x-rays reading readings scan scans view views pair pairs rating ratings",
  operation:
    "operation operations procedure procedures reduction reductions manipulation manipulations attempt attempts",
  wire: "wire wires pin pins implant implants screw screws",
  event:
    "failure failures success successes complication complications infection infections event events loss losses conversion conversions",
}))
  for (const noun of nouns.split(" ")) units[noun] = unit;

/** Singular unit of a noun, or null. */
export const unitOf = (word: string): string | null => (Object.hasOwn(units, word) ? units[word]! : null);

/** Units that a cohort is counted in; events are counted among them. */
export const isCaseUnit = (unit: string | null): boolean => unit !== null && unit !== "event" && unit !== "wire";

const passing = new Set(
  "( [ , of the and with in to for from by at on who whose had were was after before during under than".split(" "),
);

/** The unit printed after a count: the last unit noun in the few words that follow ("grade IV fractures", "wired limbs"). */
export function unitAfter(cursor: Cursor, at: number): string | null {
  for (let i = at; i < at + 6; i++) {
    const token = cursor.tokens[i];
    if (!token || token.number || token.kind === "mark") return null;
    if (passing.has(token.text)) return null;
    const unit = unitOf(token.text);
    // "fracture fragments", "shoulder radiographs": the head noun comes last.
    if (unit) return unitOf(textAt(cursor, i + 1)) ?? unit;
  }
  return null;
}

const timeAndMeasure = new Set(
  "day days week weeks month months year years hour hours minute minutes mm cm m kg degree degrees ° point points mmhg times time fold".split(
    " ",
  ),
);

/** True when the number at hand measures something and counts no cases. */
export const measures = (cursor: Cursor, at: number): boolean => {
  const text = textAt(cursor, at) === "-" ? textAt(cursor, at + 1) : textAt(cursor, at);
  return timeAndMeasure.has(text) || text.startsWith("year-") || text.startsWith("month-") || text.startsWith("week-");
};

const people = new Set(
  "observer observers rater raters surgeon surgeons centre centres center centers hospital hospitals author authors group groups series study studies technique techniques reviewer reviewers grades types categories cohorts variables outcomes tests".split(
    " ",
  ),
);

const trialWords = new Set(
  "study treatment trial intervention control comparison parallel randomised randomized".split(" "),
);

/** Things counted that are no cases: raters, groups, hospitals, the arms of a trial. */
export const countsOthers = (cursor: Cursor, at: number): boolean => {
  for (let i = at; i < at + 3; i++)
    if (people.has(textAt(cursor, i)) || (textAt(cursor, i) === "arms" && trialWords.has(textAt(cursor, i - 1))))
      return true;
  return false;
};
