import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { buildLedger } from "../../src/ledger/build-ledger.js";
import { caseCount } from "../../src/ledger/case-count.js";
import type { Denominator } from "../../src/ledger/types.js";
import type { Plan } from "../../src/plan/types.js";
import { tableOf } from "../case-table.js";

const plan: Plan = {
  title: "t",
  unit: "limb",
  limb: "shoulder",
  child: "Child",
  exclusions: [
    { name: "open wound", rule: { column: "Out", "=": "open wound" } },
    { name: "no film", rule: { column: "Out", "=": "no film" } },
  ],
  lost: { column: "Review", "=": "lost" },
  grade: { column: "Grade", order: ["I", "II"] },
  technique: {
    first: "First",
    final: "Final",
    closed: ["closed"],
    assisted: ["wire"],
    open: ["open"],
    conversionFails: ["open"],
  },
  success: [
    { kind: "position", says: "s", rule: { column: "OK", "=": true } },
    { kind: "technical", says: "s", rule: { column: "Reduced", "=": true } },
  ],
  primary: "position",
  subgroups: [],
};
const head = "ID:id | Child:child | Out | Review | Grade:grade | First | Final | OK | Reduced";
const ledgerOf = (lines: string, changes: Partial<Plan> = {}) =>
  buildLedger(tableOf(`${head}\n${lines}`), { ...plan, ...changes });
const rung = (ladder: readonly Denominator[] | undefined, name: string) => ladder!.find((one) => one.name === name)!;

describe("the ladder of denominators", () => {
  const ledger = ledgerOf(`
    a | 1 | | seen | I | closed | closed | yes | yes
    b | 1 | open wound | seen | II | closed | closed | yes | yes
    c | 2 | no film | seen | II | closed | closed | yes | yes
    d | 3 | | lost | II | closed | closed | | yes
    e | 4 | | lost | II | closed | closed | no | yes
    f | 5 | | seen | I | open | open | | yes`);
  const { position, technical } = ledger.ladders;

  it("is each line the one above less named leavers", () => {
    expect(position!.map(({ name, cases }) => [name, cases.join("")])).toEqual([
      ["screened", "abcdef"],
      ["eligible", "adef"],
      ["followed", "aef"],
      ["analysed", "ae"],
    ]);
    expect(rung(position, "eligible").leavers).toEqual([
      { reason: "open wound", cases: ["b"], children: [] },
      { reason: "no film", cases: ["c"], children: ["2"] },
    ]);
  });
  it("keeps a failure that was seen before the case was lost", () =>
    expect(rung(position, "analysed").cases).toContain("e"));
  it("judges the reduction of a case that was lost later", () =>
    expect(rung(technical, "analysed").cases).toContain("d"));
});

it("counts a closed attempt that ended open as a closed failure, whatever the position", () => {
  const ledger = ledgerOf(`
    a | 1 | | seen | I | closed | open | yes | yes
    b | 2 | | seen | I | closed | wire | yes | yes`);
  expect(ledger.cases.map(({ success, converted }) => [success.position, converted])).toEqual([
    ["no", true],
    ["yes", true],
  ]);
});

it("puts cases in order of treatment by date", () => {
  const table = tableOf(
    `ID:id | When:date | OK\n a | 2022-03-01 | yes\n b | 2021-01-01 | yes\n c | | yes\n d | 2020-01-01 | no`,
  );
  const { grade, technique, lost, ...rest } = plan;
  void [grade, technique, lost];
  const ledger = buildLedger(table, { ...rest, order: "When", exclusions: [], success: [plan.success[0]!] });
  expect(ledger.cases.map(({ id, order }) => `${id}${order}`)).toEqual(["a4", "b2", "c3", "d1"]);
});

it("makes a child succeed only when all its limbs do, standing with its higher grade", () => {
  const ledger = ledgerOf(
    `
    a | 1 | | seen | I | closed | closed | yes | yes
    b | 1 | | seen | II | closed | closed | no | yes
    c | 2 | | seen | I | closed | closed | yes | yes
    d | 2 | open wound | seen | II | closed | closed | no | yes`,
    { unit: "child" },
  );
  expect(ledger.cases.map(({ id, grade, success }) => [id, grade, success.position])).toEqual([
    ["b", "II", "no"],
    ["c", "I", "yes"],
  ]);
});

it("adds up for any mixture of exclusions, losses, questions and blanks, in cases and in children", () => {
  const cell = (...values: string[]) => fc.constantFrom(...values);
  const line = fc.tuple(
    cell("1", "2", "3", "4"),
    cell("", "open wound", "no film", "?"),
    cell("seen", "lost", "?", ""),
    cell("I", "II", "?", ""),
    cell("closed", "open", "wire", "?", ""),
    cell("closed", "open", "wire"),
    cell("yes", "no", "", "?"),
  );
  fc.assert(
    fc.property(
      fc.array(line, { minLength: 1, maxLength: 25 }),
      fc.constantFrom("limb" as const, "child" as const),
      (lines, unit) => {
        const ledger = ledgerOf(
          lines
            .map(
              ([child, out, review, grade, first, final, ok], i) =>
                `c${i} | ${child} | ${out} | ${review} | ${grade} | ${first} | ${final} | ${ok} | ${ok}`,
            )
            .join("\n"),
          { unit },
        );
        for (const ladder of Object.values(ledger.ladders))
          for (let i = 1; i < ladder.length; i++) {
            const [above, below] = [ladder[i - 1]!, ladder[i]!];
            const gone = below.leavers.flatMap(({ cases }) => cases);
            expect([...below.cases, ...gone].toSorted()).toEqual(above.cases.toSorted());
            const goneChildren = below.leavers.flatMap(({ children }) => children);
            expect([...below.children, ...goneChildren].toSorted()).toEqual(above.children.toSorted());
          }
      },
    ),
    { numRuns: 200 },
  );
});

describe("a count", () => {
  const { cases } = ledgerOf("a | 1 | | seen | I | closed | closed | yes | yes");
  it("refuses a case that stands twice", () =>
    expect(() => caseCount([cases[0]!, cases[0]!], () => "yes", "limb")).toThrow(
      new RangeError("caseCount: a case may stand once only"),
    ));
  it("refuses a case that was not judged", () =>
    expect(() => caseCount(cases, () => "unknown", "limb")).toThrow(
      new RangeError("caseCount: every case must be judged yes, no or asked"),
    ));
});
