import { describe, expect, it, test } from "vitest";
import type { Value } from "../../src/cases/types.js";
import { judge, type Judgement } from "../../src/plan/judge.js";
import type { Rule } from "../../src/plan/types.js";

const values: Record<string, Value> = {
  residual: { kind: "number", number: 33 },
  elevation: { kind: "number", number: 170, bound: "above" },
  flexion: { kind: "number", number: 20, bound: "below" },
  success: { kind: "yesNo", yes: true },
  excluded: { kind: "yesNo", yes: false },
  grade: { kind: "grade", grade: "III", sub: "b" },
  technique: { kind: "text", text: " Closed " },
  complications: { kind: "list", items: ["Stiffness"] },
  none: { kind: "list", items: [] },
  review: { kind: "missing", reason: "lost" },
  blank: { kind: "missing", reason: "blank" },
  asked: { kind: "asked", question: "q1" },
  operated: { kind: "date", iso: "2021-04-03" },
};
const ask = (rule: Rule): Judgement => judge(rule, (column) => values[column]!);

test.each<[Rule, Judgement]>([
  [{ column: "residual", "≤": 33 }, "yes"],
  [{ column: "residual", "<": 33 }, "no"],
  [{ column: "residual", "≥": 33 }, "yes"],
  [{ column: "residual", ">": 33 }, "no"],
  [{ column: "residual", "=": 33 }, "yes"],
  [{ column: "residual", in: [20, 33] }, "yes"],
  [{ column: "success", "=": true }, "yes"],
  [{ column: "success", "=": "no" }, "no"],
  [{ column: "excluded", "=": false }, "yes"],
  [{ column: "excluded", "=": 0 }, "yes"],
  [{ column: "excluded", "=": "pathological fracture" }, "no"],
  [{ column: "excluded", "=": "lost" }, "no"],
  [{ column: "success", "=": "lost" }, "no"],
  [{ column: "grade", "=": "III" }, "yes"],
  [{ column: "grade", in: ["I", "iiib"] }, "yes"],
  [{ column: "technique", "=": "closed" }, "yes"],
  [{ column: "complications", "=": "stiffness" }, "yes"],
  [{ column: "none", "=": "none" }, "yes"],
  [{ column: "complications", "=": "none" }, "no"],
  [{ column: "operated", "=": "2021-04-03" }, "yes"],
  [{ column: "review", "=": "lost" }, "yes"],
  [{ column: "residual", "=": "lost" }, "no"],
  [{ column: "blank", "=": "lost" }, "no"],
  [{ column: "blank", "≥": 3 }, "unknown"],
  [{ column: "blank", present: false }, "yes"],
  [{ column: "residual", present: true }, "yes"],
  [{ column: "asked", "=": 1 }, "asked"],
])("%j is %s", (rule, judgement) => expect(ask(rule)).toBe(judgement));

describe("a value known only to lie beyond a bound", () => {
  test.each<[Rule, Judgement]>([
    [{ column: "elevation", "≥": 150 }, "yes"],
    [{ column: "elevation", ">": 170 }, "yes"],
    [{ column: "elevation", "≥": 175 }, "unknown"],
    [{ column: "elevation", "<": 160 }, "no"],
    [{ column: "elevation", "<": 180 }, "unknown"],
    [{ column: "elevation", "=": 160 }, "no"],
    [{ column: "elevation", "=": 175 }, "unknown"],
    [{ column: "flexion", "≤": 30 }, "yes"],
    [{ column: "flexion", ">": 30 }, "no"],
    [{ column: "flexion", "≥": 10 }, "unknown"],
  ])("%j is %s", (rule, judgement) => expect(ask(rule)).toBe(judgement));
});

describe("rules of rules follow Kleene's tables", () => {
  const yes: Rule = { column: "residual", present: true };
  const no: Rule = { not: yes };
  const unknown: Rule = { column: "blank", "≥": 3 };
  const asked: Rule = { column: "asked", "≥": 3 };
  it("lets one no decide all, and one yes decide any, whatever else is not known", () => {
    expect(ask({ all: [yes, asked, no] })).toBe("no");
    expect(ask({ any: [no, asked, yes] })).toBe("yes");
  });
  it("asks before it says unknown", () => {
    expect(ask({ all: [yes, unknown, asked] })).toBe("asked");
    expect(ask({ any: [no, unknown, asked] })).toBe("asked");
    expect(ask({ all: [yes, unknown] })).toBe("unknown");
  });
  it("turns only yes and no round", () => {
    expect(ask({ not: unknown })).toBe("unknown");
    expect(ask({ not: asked })).toBe("asked");
  });
});
