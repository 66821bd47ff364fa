import type { AppraisalItem } from "../../findings/appraisal/appraisal.js";

/**
 * What each item asks, in our own words: the subjects of the methodological index for non-randomised surgical studies (Slim et
 * al. 2003, ANZ J Surg 73:712-716) and of the appraisal of case series (Munn et al. 2020, JBI Evid Synth 18:2127-2133).
 */
export const itemWords: Readonly<Record<AppraisalItem, string>> = {
  aim: "Is it said exactly what was to be found out?",
  consecutive: "Is everyone in who met the rules in the time, or is it told why not?",
  prospective: "Was it decided before treatment what to record?",
  outcome: "Does what was measured answer the question asked?",
  assessor: "Did somebody judge the result who did not know, or did not give, the treatment?",
  followUp: "Were they seen long enough for the failures to show?",
  loss: "How many were lost, fewer than one in twenty?",
  size: "Was it worked out beforehand how many cases would be needed?",
  control: "Is the other treatment one that a good surgeon would choose today?",
  period: "Were both treatments given in the same years?",
  baseline: "Were the two groups alike before treatment, by grade above all?",
  analysis: "Do tests and intervals fit the question and the counts?",
  inclusion: "Would you know from the paper who belonged in it?",
  measured: "Was the injury graded in one stated way in all?",
  identified: "Was the diagnosis made by a method that can be trusted in all?",
  allConsecutive: "Were cases taken one after another?",
  complete: "Were all of them taken in?",
  demographics: "Are age and sex told?",
  clinical: "Are grade, technique and other injuries told?",
  outcomesReported: "Is it told how each case ended?",
  centre: "Is it told where, and by whom, they were treated?",
  statistics: "Were the numbers worked out in a fitting way?",
};

export const indexGroup =
  "Any study, and from the ninth on a comparison (0 not told, 1 told and not good enough, 2 told and good)";
export const caseSeriesGroup = "A series of cases (yes, no, unclear)";
