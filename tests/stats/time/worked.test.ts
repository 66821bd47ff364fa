import { expect, it } from "vitest";
import type { Durations } from "../../../src/stats/time/durations.js";
import { kaplanMeier } from "../../../src/stats/time/kaplan-meier.js";
import { logRank } from "../../../src/stats/time/log-rank.js";
import { logRankExact } from "../../../src/stats/time/log-rank-exact.js";
import { worked } from "../../worked.js";

/** "6+" was last seen at 6. */
const read = (text: string): Durations => {
  const marks = text.split(",");
  return { times: marks.map(parseFloat), events: marks.map((mark) => !mark.endsWith("+")) };
};
const mercaptopurine = read("6,6,6,6+,7,9+,10,10+,11+,13,16,17+,19+,20+,22,23,25+,32+,32+,34+,35+");
const control = read("1,1,2,2,3,4,4,5,5,8,8,8,8,11,11,12,12,15,17,22,23");
function curve(durations: Durations) {
  const result = kaplanMeier(durations);
  if ("estimate" in result) throw new Error(result.because);
  const at = (time: number) => result.steps.findLast((step) => step.time <= time)!;
  return { ...result, at };
}

it("remission on 6-mercaptopurine: Freireich 1963, Cox and Oakes 1984", () => {
  const of = (key: string) => worked("I-km-6mp", key);
  const treated = curve(mercaptopurine);
  for (const time of [6, 7, 10, 13, 16, 22, 23]) {
    of(`S_${time}`).check(treated.at(time).survival);
    of(`se_${time}`).check(treated.at(time).standardError!);
  }
  of("median_6mp").check(treated.median.estimate!);
  of("median_ctrl").check(curve(control).median.estimate!);
  // Limits at week 10 as the notes of the example give them.
  expect(treated.at(10).interval!.low).toBeCloseTo(0.5032, 4);
  expect(treated.at(10).interval!.high).toBeCloseTo(0.8894, 4);
  const test = logRank([mercaptopurine, control]);
  if (!("statistic" in test)) throw new Error(test.because);
  of("logrank").check(test.statistic);
  of("E_6mp").check(test.groups[0]!.expected);
  of("E_ctrl").check(test.groups[1]!.expected);
  const permuted = logRankExact({ first: mercaptopurine, second: control }, { draws: 2000 });
  expect(permuted).toMatchObject({ distribution: "Monte Carlo", observed: 9, p: { less: 1 / 2001 } });
});

it("twenty older adults: Boston University School of Public Health", () => {
  const times = [24, 3, 11, 19, 24, 13, 14, 2, 18, 17, 24, 21, 12, 1, 10, 23, 6, 5, 9, 17];
  const events = [0, 1, 0, 0, 0, 0, 1, 0, 0, 0, 0, 0, 0, 1, 0, 1, 0, 1, 0, 1].map(Boolean);
  const { at } = curve({ times, events });
  for (const time of [1, 3, 5, 14, 17, 23]) {
    worked("I-km-bu", `S_${time}`).check(at(time).survival);
    worked("I-km-bu", `allow_${time}`).check(1.96 * at(time).standardError!);
  }
});
