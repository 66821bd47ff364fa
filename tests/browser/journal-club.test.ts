// The journal club in a real browser: presenting and voting by keyboard alone, the keypad, undo, the printed page.
import { readFile } from "node:fs/promises";
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
  const { page, trouble }: TestPage = await site.open("journal-club/", options);
  await page.waitForSelector("#first-vote .picture svg");
  await use(page);
  expect(trouble).toEqual([]);
  await page.context().close();
};
const shown = async (page: Page): Promise<string> =>
  (await page.locator("main .question:visible h2").allInnerTexts()).join("; ");
const onStage = (page: Page) => expect.poll(() => shown(page));
const answer = (page: Page, id: string) => expect.poll(() => page.locator(`#${id} .answer`).innerText());

it("presents one question a screen and takes votes, by keyboard alone", () =>
  withPage(async (page) => {
    await page.keyboard.press("?");
    await page.locator("dialog[open]", { hasText: "next question" }).waitFor();
    await page.keyboard.press("Escape");
    await page.keyboard.press("p");
    await onStage(page).toBe("What do you expect?");
    // Series, grade, how the votes come, then eleven steps: the ninth is 80%.
    for (let i = 0; i < 12; i++) await page.keyboard.press("Tab");
    await page.keyboard.type("9");
    await page.keyboard.press("Tab");
    await page.keyboard.type("5");
    await answer(page, "first-vote").toContain("The room expects 84% (mean of 14 hands).");
    await page.keyboard.press("Escape");
    await page.keyboard.press("u");
    await answer(page, "first-vote").toContain("The room expects 80% (mean of 9 hands).");
    await page.keyboard.press("ArrowRight");
    await onStage(page).toBe("What does the paper claim?");
    await page.keyboard.press("n");
    await page.locator("#claim .presenter-notes").waitFor();
    await page.keyboard.press("t");
    await expect.poll(() => page.locator(".countdown .time").innerText(), { timeout: 4000 }).toMatch(/^19:5/);
    await page.keyboard.press("End");
    await onStage(page).toBe("What do we take home?");
    await page.keyboard.press("PageUp");
    await onStage(page).toBe("What should the guess become?");
    await page.keyboard.press("Home");
    await page.keyboard.press("ArrowLeft");
    await onStage(page).toBe("What do you expect?");
    await page.keyboard.press("Escape");
    await expect.poll(() => page.locator("main .question:visible").count()).toBe(12);
  }));

it("pairs numbered voters at the keypad, and says why so few are not tested", () =>
  withPage(async (page) => {
    await page.locator("#vote-by-before").selectOption("ballots");
    for (const [poll, step, would] of [
      ["before", "80%", "yes"],
      ["after", "50%", "no"],
    ] as const) {
      await page.getByRole("button", { name: `Open the keypad, ${poll}` }).press("Enter");
      const pad = page.locator("dialog[open]");
      for (const voter of ["1", "2"]) {
        await pad.getByLabel("Your number").fill(voter);
        await pad.getByLabel("So many in 100").selectOption({ label: step });
        await pad.getByLabel("Would you do it?").selectOption(would);
        await pad.getByRole("button", { name: "Vote" }).press("Enter");
        await expect.poll(() => pad.getByLabel("Your number").inputValue()).toBe("");
      }
      await page.keyboard.press("Escape");
    }
    await answer(page, "second-vote").toContain(
      "2 of 2 changed their mind: 2 from yes to no, 0 from no to yes. Shown, not tested",
    );
    await expect.poll(() => page.locator("#second-vote .picture svg").count()).toBe(2);
  }));

it("teaches by its sliders, and keeps what people answered of the paper without adding it up", () =>
  withPage(async (page) => {
    const kappa = page.locator("#bothHigh");
    await kappa.focus();
    await page.keyboard.press("Home");
    await page.keyboard.press("ArrowRight");
    await answer(page, "grading").toContain("57 of 60 radiographs (95%), both calling 1 high");
    await answer(page, "grading").toContain("Kappa is 0.38");
    await page.locator("#high").press("Home");
    await answer(page, "fair").toContain("Team 1 succeeds in 70% and Team 2 in 90%");
    await page.locator("#lost").press("ArrowRight");
    await answer(page, "who").toContain("With 4 lost cases");
    await expect.poll(() => page.locator("#beside .picture svg").count()).toBe(2);
    await page.locator("#appraisal details.appraisal summary").first().press("Enter");
    const first = page.locator("#appraisal fieldset").first();
    await first.locator("select").selectOption("2");
    await first.getByLabel("Page").fill("3");
    await answer(page, "appraisal").toContain("1 of 22 questions answered, by people, not by the kit.");
  }));

it("checks the paper's own numbers on stage, and a pasted text by keyboard alone", () =>
  withPage(async (page) => {
    await answer(page, "claim-check").toContain("6 numbers read: 4 hold and 2 fail.");
    await page.keyboard.press("p");
    await page.keyboard.press("ArrowRight");
    await page.keyboard.press("ArrowRight");
    await expect.poll(() => shown(page)).toBe("Do its numbers hold?");
    await page.getByRole("button", { name: /^fails: .*31 of 37/ }).press("Enter");
    await page.locator("#claim-check .sum", { hasText: "arithmetic: fails" }).waitFor();
    await page.locator("#claim-check summary").filter({ hasText: "Paste the text" }).press("Enter");
    await page.locator("#abstract").fill("<b>Success</b> in 9 of 9 limbs (100%).");
    await answer(page, "claim-check").not.toContain("6 numbers read");
    expect(await page.locator("#claim-check .marked b").count()).toBe(0);
    await page.locator("#abstract").fill("");
    await answer(page, "claim-check").toContain("No text yet");
  }));

it("saves everything typed and takes it back another day", async () => {
  let file = Buffer.of();
  await withPage(async (page) => {
    await page.locator("#club-series").selectOption("Series B");
    await page.locator("#vote-by-before").selectOption("ballots");
    await page.getByRole("button", { name: "Open the keypad, before" }).press("Enter");
    const pad = page.locator("dialog[open]");
    await pad.getByLabel("Your number").fill("12");
    await pad.getByLabel("So many in 100").selectOption({ label: "80%" });
    await pad.getByLabel("Would you do it?").selectOption("yes");
    await pad.getByRole("button", { name: "Vote" }).press("Enter");
    await page.keyboard.press("Escape");
    await page.locator("#take-home-text").fill("ask for the grades");
    await page.locator("#appraisal details.appraisal summary").first().press("Enter");
    await page.locator("#appraisal fieldset").first().getByLabel("Quotation").fill("We asked whether");
    await page.locator("#abstract").evaluate((field) => ((field as HTMLTextAreaElement).value = "9 of 9 (100%)."));
    await page.locator("#abstract").dispatchEvent("input");
    await answer(page, "claim-check").toContain("1 number read");
    const [download] = await Promise.all([
      page.waitForEvent("download"),
      page.getByRole("button", { name: "Save the evening" }).press("Enter"),
    ]);
    expect(download.suggestedFilename()).toBe("evening.json");
    file = await readFile(await download.path());
  });
  await withPage(async (page) => {
    await page.locator("#sheet-file").setInputFiles({
      name: "evening.json",
      mimeType: "application/json",
      buffer: file,
    });
    await answer(page, "first-vote").toContain("The room expects 80% (one hand).");
    await answer(page, "claim").toContain("Series B reports");
    await answer(page, "claim-check").toContain("1 number read");
    await answer(page, "take-home").toContain("We will: ask for the grades");
    await expect.poll(() => page.locator("#club-series").inputValue()).toBe("Series B");
    expect(await page.locator("#vote-by-before").inputValue()).toBe("ballots");
    const quotation = page.locator("#appraisal fieldset").first().getByLabel("Quotation");
    expect(await quotation.inputValue()).toBe("We asked whether");
    await page.locator("#sheet-file").setInputFiles({
      name: "evening.json",
      mimeType: "application/json",
      buffer: Buffer.from(JSON.stringify({ evening: 1 })),
    });
    await expect.poll(() => page.locator(".error").first().innerText()).toContain("evening.json");
    await answer(page, "first-vote").toContain("80%");
  });
});

it("breaks no accessibility rule while presenting, and fits 360 px", () =>
  withPage(
    async (page) => {
      await page.keyboard.press("p");
      for (let i = 0; i < 11; i++) {
        const [wide, view] = await page.evaluate(() => [
          document.documentElement.scrollWidth,
          document.documentElement.clientWidth,
        ]);
        expect(wide, await shown(page)).toBe(view);
        if (i === 0 || i === 2 || i === 8) expect(await axeViolations(page)).toEqual([]);
        await page.keyboard.press("PageDown");
      }
    },
    { viewport: { width: 360, height: 740 }, colorScheme: "dark" },
  ));

it.each(["A4", "Letter"])("prints the handout on one page of %s, in the light colours, with its pictures", (paper) =>
  withPage(
    async (page) => {
      await page.locator("#paper").selectOption(paper);
      await page.locator("#hands-before-8").fill("9");
      await page.locator("#hands-after-5").fill("9");
      await expect.poll(() => page.locator(".handout").textContent()).toContain("80% and now expects 50%");
      await expect.poll(() => page.locator(".handout img[src^='data:image/svg']").count()).toBe(2);
      const pdf = await page.pdf({ preferCSSPageSize: true });
      const text = pdf.toString("latin1");
      expect(text.match(/\/Type\s*\/Page\b/g)).toHaveLength(1);
      const [, width] = /\/MediaBox\s*\[0 0 ([\d.]+)/.exec(text)!;
      expect(Math.round(Number(width))).toBe(paper === "A4" ? 595 : 612);
    },
    { colorScheme: "dark" },
  ),
);
