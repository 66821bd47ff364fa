import type { Doubt, Draft } from "../doubts.js";
import { askAges } from "./ask-ages.js";
import { askFarAges } from "./ask-far-ages.js";
import { askAttempts } from "./ask-attempts.js";
import { askDateOrder } from "./ask-date-order.js";
import { askFillDown } from "./ask-fill-down.js";
import { askRareGrades } from "./ask-rare-grades.js";
import { askGrades } from "./ask-grades.js";
import { askInclusion } from "./ask-inclusion.js";
import { askLoss } from "./ask-loss.js";
import { askNumbers } from "./ask-numbers.js";
import { askRaters } from "./ask-raters.js";
import { askSpellings } from "./ask-spellings.js";
import { askStatus } from "./ask-status.js";
import { askSuccess } from "./ask-success.js";
import { askSwappedDates } from "./ask-swapped-dates.js";
import { askTwoColumns } from "./ask-two-columns.js";
import { askVisits } from "./ask-visits.js";

const checks = [
  askNumbers,
  askSwappedDates,
  askDateOrder,
  askAges,
  askFarAges,
  askInclusion,
  askLoss,
  askStatus,
  askFillDown,
  askRareGrades,
  askGrades,
  askSuccess,
  askSpellings,
  askAttempts,
  askRaters,
  askVisits,
  askTwoColumns,
];

/** Runs every check of a read draft that compares cells with each other. */
export function checkDraft(draft: Draft): Doubt[] {
  return checks.flatMap((check) => check(draft));
}
