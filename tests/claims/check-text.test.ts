import { expect, test } from "vitest";
import { checkText } from "../../src/claims/check-text.js";
import given from "../reference/claims.json" with { type: "json" };
import generated from "../reference/reported-claims.json" with { type: "json" };
import { r } from "../r.js";
import { failing, markedSentences } from "./marked-sentences.js";

const handWritten = markedSentences("hand-written-claims.txt");

test.each(given)(
  "gives sentence $id of the field's list its verdict: $verdict",
  ({ sentence, given: table, consistent }) => {
    expect(failing(table === null ? sentence : `${sentence}\n\n${table}`).length === 0).toBe(consistent);
  },
);

test("fails an over-claim in its conclusion and not in its arithmetic", () => {
  const [claim] = failing(given.find(({ kind }) => kind === "over-claim")!.sentence);
  expect(claim).toMatchObject({ kind: "over-claim", arithmetic: "holds", conclusion: "fails" });
});

test("finds every planted error of the hand-written sentences and accuses no sound one", () => {
  expect(handWritten.length).toBeGreaterThan(250);
  expect(handWritten.filter(({ sound }) => !sound).length).toBeGreaterThan(90);
  expect(handWritten.filter(({ sound, text }) => (failing(text).length === 0) !== sound)).toEqual([]);
});

test("accuses none of the generated sound sentences", () => {
  expect(generated.sound.filter(({ text }) => failing(text).length > 0)).toEqual([]);
});

test("finds every planted error of the generated sentences", () => {
  expect(generated.wrong.filter(({ text }) => failing(text).length === 0)).toEqual([]);
});

test("finds at least 99% of the one-digit alterations that outside arithmetic calls detectable", () => {
  const detectable = generated.alterations.filter((alteration) => alteration.detectable);
  const found = detectable.filter(({ text }) => failing(text).length > 0);
  expect(found.length / detectable.length).toBeGreaterThanOrEqual(0.99);
});

test("places each claim where it stands in the text", () => {
  const text = "Methods.\n\nReduction held in 31 of 37 fractures (86%), and none of 24 children had an infection.";
  const { claims } = checkText(text);
  for (const claim of claims) expect(text.slice(claim.start, claim.end)).toBe(claim.text);
  expect(claims.map(({ text: part }) => part)).toEqual(["31 of 37 fractures (86%)", "none of 24"]);
});

test("says politely what the figure would be and what to ask", () => {
  const [claim] = checkText("Reduction held in 31 of 37 fractures (86%).").claims;
  expect(claim!.because).toBe("31 of 37 is 84%, not 86%; 86% would be 32 of 37. Which number is right?");
  expect(claim!.printed.percent).toEqual({ value: 86, decimals: 0 });
});

test("names every method that prints the limits, with the rounding", () => {
  const [claim] = checkText("Success was 41/47 (87%; 95% CI 75% to 94%).").claims;
  expect(claim!.reproducedBy).toContain("Wilson");
  expect(claim!.reproducedBy).toContain("Jeffreys, truncated");
  expect(claim!.reproducedBy).not.toContain("exact (Clopper–Pearson)");
});

test("calls an interval that only the Wald formula gives reproduced by a poor method", () => {
  const [claim] = checkText("Success was 20 of 30 (67%; 95% CI 49.8% to 83.5%).").claims;
  expect(claim!.arithmetic).toBe("holds");
  expect(claim!.because).toContain("Reproduced, poor method");
});

test("fails the unit when a number of limbs is printed as children, and shows how clustering would move the interval", () => {
  const start = "We treated 51 fractures in 48 children. ";
  expect(failing(`${start}Success was seen in 42 of 51 children (82%).`)[0]).toMatchObject({
    arithmetic: "holds",
    unit: "fails",
  });
  const claim = checkText(`${start}Success was seen in 42 of 51 fractures (82%).`).claims.at(-1)!;
  expect(claim.unit).toBe("holds");
  expect(claim.wouldChange.map((line) => line.split(":")[0])).toEqual(
    [0, 0.5, 1].map((rho) => `correlation ${rho} within children`),
  );
});

test("draws the ladder of denominators with its changes", () => {
  const { denominators } = checkText("We screened 64 fractures. Of 55 eligible fractures, 51 fractures were followed.");
  expect(denominators.map(({ value, change }) => [value, change])).toEqual([[64, null], [55, -9], [51, -4]]); // prettier-ignore
});

test("lists numbers that it did not understand", () => {
  expect(checkText("The index was 7.25 in theatre.").notUnderstood.map(({ text }) => text)).toEqual(["7.25"]);
});

test("recomputes p values and limits as R does", async () => {
  const recomputed = (text: string, kind: string) =>
    checkText(text).claims.find((claim) => claim.kind === kind)!.recomputed;
  const p = recomputed("Success was 33 of 38 v 7 of 12 (Fisher's exact test, p = 0.046).", "p value");
  const interval = recomputed("Success was 41 of 47 (87%; 95% CI 75% to 94%).", "interval");
  const [fisher, chi, yates, low, high] = await r(
    "t <- matrix(c(33,5,7,5),2); c(fisher.test(t)$p.value, chisq.test(t,correct=FALSE)$p.value, chisq.test(t)$p.value, prop.test(41,47,correct=FALSE)$conf.int)",
  );
  expect(p["Fisher, summing the tables that are no likelier"]).toBeCloseTo(fisher!, 10);
  expect(p["chi-square without correction"]).toBeCloseTo(chi!, 10);
  expect(p["chi-square with Yates's correction"]).toBeCloseTo(yates!, 10);
  expect([interval.low! / 100, interval.high! / 100]).toEqual([expect.closeTo(low!, 10), expect.closeTo(high!, 10)]);
});

test("reads a paper of 5,000 words in less than 300 ms", () => {
  const prose =
    "The arm was held in a sling, and the children were seen again in the clinic until the fracture had united.";
  const sentences = generated.sound.flatMap(({ text }, i) => (i % 3 === 0 ? [text, prose, prose] : []));
  const words = sentences.join(" ").split(" ").slice(0, 5000).join(" ");
  expect(words.split(" ")).toHaveLength(5000);
  checkText(words.slice(0, 3000));
  // Time on the processor: other work on the machine must not fail the test.
  const times = [0, 1, 2, 3, 4, 5].map(() => {
    const start = process.cpuUsage();
    checkText(words);
    const { user, system } = process.cpuUsage(start);
    return (user + system) / 1000;
  });
  expect(Math.min(...times)).toBeLessThan(300);
});

test.each([
  ["nested brackets", "(".repeat(1e7)],
  ["digits", "1234567890".repeat(2e5)],
  ["numbers", "31/37 (84%) ".repeat(2e5)],
  ["points", "1.1.1.1.".repeat(3e5)],
  ["tags", "<td<td".repeat(4e5)],
  ["entities", "&lt&".repeat(6e5)],
  ["number words", "twenty ".repeat(3e5)],
  ["one word", "a".repeat(1e7)],
  ["dashes", "-−–".repeat(7e5)],
  ["tabs", "1\t".repeat(1e6)],
])("reads megabytes of %s in bounded time", (_, text) => {
  const start = process.cpuUsage();
  checkText(text);
  const { user, system } = process.cpuUsage(start);
  expect((user + system) / 1000).toBeLessThan(10_000);
});

test("leaves markup and scripts in pasted text as text", () => {
  const text = '<script>alert(1)</script><img src=x onerror="x()"> Success was 31/37 (84%).';
  expect(checkText(text).claims.map((claim) => claim.text)).toEqual(["31/37 (84%)"]);
});

test("refuses what is no text", () => {
  expect(() => checkText(" \n ")).toThrow(new RangeError("checkText: the text is empty"));
  expect(() => checkText(7 as unknown as string)).toThrow(
    new TypeError("checkText: text must be a string, got number"),
  );
});
