// The published series in a real browser: cards typed by keyboard only, one mix, together only when asked.
import type { Page } from "playwright-core";
import { afterAll, beforeAll, expect, it } from "vitest";
import { axeViolations, testSite, type TestPage, type TestSite } from "./page.js";

let site: TestSite;
beforeAll(async () => {
  site = await testSite();
}, 120_000);
afterAll(() => site.close());

const withPage = async (
  use: (page: Page) => Promise<void>,
  options?: Parameters<TestSite["open"]>[1],
): Promise<void> => {
  const { page, trouble }: TestPage = await site.open("published-series/", options);
  await page.waitForSelector("#mix .picture svg");
  await use(page);
  expect(trouble).toEqual([]);
  await page.context().close();
};

it("sets the invented series beside our own, and brings series B to 77% with our mix", () =>
  withPage(async (page) => {
    await page.locator("#mix-of").selectOption({ label: "of Our series" });
    await expect
      .poll(() => page.locator("#mix .answer").innerText())
      .toContain("Series B reported 49 of 54 (91%); with the grade mix of Our series it would be 77%.");
    await expect
      .poll(() => page.locator("#together .answer").innerText())
      .toContain("They are not put together unless you ask.");
    await page.locator("#pool").check();
    await expect.poll(() => page.locator("#together .answer").innerText()).toContain("The middle series would have");
  }));

it("takes four papers by keyboard only", () =>
  withPage(async (page) => {
    await page.getByRole("button", { name: "Start afresh" }).press("Enter");
    await expect.poll(() => page.locator("#beside .answer").innerText()).toContain("No series yet");
    for (let paper = 0; paper < 4; paper++) {
      await page.getByRole("button", { name: "Add a series" }).press("Enter");
      // The cursor stands in the name; tabs lead through the card in reading order.
      await page.keyboard.press("ControlOrMeta+A");
      await page.keyboard.type(`Paper ${paper + 1}`);
      for (const text of ["", "position at union", "", "12 months", "2", "none"]) {
        await page.keyboard.press("Tab");
        if (text !== "") await page.keyboard.type(text);
      }
      for (let grade = 0; grade < 4; grade++) {
        // Grade, successes, cases, technique, the button that removes the line.
        for (const text of [null, String(5 - grade), "6", null, null]) {
          await page.keyboard.press("Tab");
          if (text !== null) await page.keyboard.type(text);
        }
      }
    }
    await expect
      .poll(() => page.locator("#beside .answer").innerText())
      .toContain("4 series: Paper 1, Paper 2, Paper 3 and Paper 4.");
    await expect.poll(() => page.locator("#mix .answer").innerText()).toContain("Paper 4 reported 14 of 24 (58%)");
    await expect
      .poll(() => page.locator("#lost .answer").innerText())
      .toContain("with 2 lost cases counted either way");
  }));

it("lists the counts that a percentage without its N could be", () =>
  withPage(async (page) => {
    await page.locator(".card-form summary").first().press("Enter");
    await page.getByLabel("A percentage without its N, %").first().fill("83.8");
    await expect.poll(() => page.locator(".card-form [role=status]").first().innerText()).toContain("31 of 37");
  }));

it("says what is wrong in a dropped file, and keeps the cards", () =>
  withPage(async (page) => {
    const drop = (name: string, text: string) =>
      page.locator("#sheet-file").setInputFiles({ name, mimeType: "text/csv", buffer: Buffer.from(text) });
    await drop("bad.csv", "series,grade,successes,cases\nA,I,5,4\n");
    await expect.poll(() => page.locator(".error").innerText()).toContain("bad.csv: row 2");
    await drop(
      "x.json",
      JSON.stringify({
        cards: [{ name: "<img src=x onerror=alert(1)>", rows: [{ grade: "I", successes: 1, cases: 2 }] }],
      }),
    );
    await expect.poll(() => page.locator("#beside .answer").innerText()).toContain("<img src=x onerror=alert(1)>");
    expect(await page.locator("img").count()).toBe(0);
  }));

it.each([
  ["light", 1280],
  ["dark", 360],
] as const)("breaks no accessibility rule, %s at %i pixels, nothing beyond the edge", (colorScheme, width) =>
  withPage(
    async (page) => {
      await page.locator(".card-form summary").first().press("Enter");
      expect(await axeViolations(page)).toEqual([]);
      expect(
        await page.evaluate(
          (w) =>
            [...document.querySelectorAll("main *")]
              .filter((n) => n.getBoundingClientRect().right > w + 1 && !n.closest(".scroll"))
              .map((n) => n.outerHTML.slice(0, 80))
              .slice(0, 3),
          width,
        ),
      ).toEqual([]);
    },
    { colorScheme, viewport: { width, height: 900 } },
  ),
);
