// The sheet step in a real browser: the map, the questions by keyboard, undo, the answers as a file, the log.
import { readFileSync } from "node:fs";
import type { Locator, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { axeViolations, testSite, type TestSite } from "./page.js";

let site: TestSite;
beforeAll(async () => {
  site = await testSite();
}, 120_000);
afterAll(() => site.close());

const sheet = `ID,Name,Side,Injury date,Grade,First technique,Success,Note
H1,Ann Zorvia,L,2021-04-03,II,closed,yes,Zorvia came late
H2,Bo Quellan,R,2021-05-13,3-4,closed,x,
H3,Cy Brumax,L,2021-06-23,III,open,x,
H4,Di Tyndil,L,2021-07-03,III,closed,no,
`;
const names = /zorvia|quellan|brumax|tyndil/i;

const drop = (page: Page, name: string, text: string): Promise<void> =>
  page.locator("#sheet-file").setInputFiles({ name, mimeType: "text/csv", buffer: Buffer.from(text) });
const withSheet = async (
  use: (page: Page, panel: Locator) => Promise<void>,
  options?: Parameters<TestSite["open"]>[1],
): Promise<void> => {
  const { page, trouble } = await site.open("case-series/", options);
  await page.waitForSelector("#how-often .picture svg");
  await drop(page, "mine.csv", sheet);
  const panel = page.locator(".reading");
  await panel.getByText("What does each column mean?").waitFor();
  await use(page, panel);
  expect(await page.content()).not.toMatch(names);
  expect(trouble).toEqual([]);
  await page.context().close();
};
const saved = async (page: Page, name: string): Promise<{ name: string; text: string }> => {
  const [download] = await Promise.all([page.waitForEvent("download"), page.getByRole("button", { name }).click()]);
  return { name: download.suggestedFilename(), text: readFileSync(await download.path(), "utf8") };
};
const left = (panel: Locator): Promise<string> => panel.locator(".left").innerText();

describe("the sheet step", () => {
  it("draws every cell, and its three counts add to all of them", () =>
    withSheet(async (_, panel) => {
      await panel.locator(".legend li").nth(3).waitFor();
      const legend = await panel.locator(".legend li").allInnerTexts();
      const [read, asked, aside, all] = legend.map((text) => Number(/\d+/.exec(text)![0]));
      expect(all).toBe(40);
      expect(read! + asked! + aside!).toBe(all);
      expect(asked).toBe(3);
      expect(await panel.getByRole("img").getAttribute("aria-label")).toBe(
        `Map of the sheet, one mark a cell: ${read} read, ${asked} asked about, ${aside} set aside`,
      );
    }));

  it("is answered by keyboard alone, all like cells at once, and what was answered is undone and done again", () =>
    withSheet(async (page, panel) => {
      await expect.poll(() => left(panel)).toBe("3 questions are left.");
      const success = panel.locator("form", { hasText: "rows 3, 4" });
      await success.getByRole("radio", { name: "no", exact: true }).focus();
      await page.keyboard.press("Space");
      await page.keyboard.press("Enter");
      await expect.poll(() => left(panel)).toBe("2 questions are left.");
      await expect.poll(() => page.evaluate(() => document.activeElement?.matches(".asked input"))).toBe(true);
      await expect.poll(() => panel.locator(".legend").innerText()).toContain("asked about: 1");
      await panel.getByRole("button", { name: "Undo" }).click();
      await expect.poll(() => left(panel)).toBe("3 questions are left.");
      await panel.getByRole("button", { name: "Redo" }).click();
      await expect.poll(() => left(panel)).toBe("2 questions are left.");
      await panel.getByRole("button", { name: "Count these cases" }).click();
      await expect.poll(() => page.locator("#how-often .answer").innerText()).toContain("1 of 4");
      await panel.locator("> summary").click();
      await panel.getByRole("button", { name: "Undo" }).click();
      await expect.poll(() => page.locator("#how-often .answer").innerText()).not.toContain("1 of 4");
    }));

  it("saves the answers, reads them again, and refuses with file and rule those that do not fit", () =>
    withSheet(async (page, panel) => {
      const success = panel.locator("form", { hasText: "rows 3, 4" });
      await success.getByRole("radio", { name: "yes", exact: true }).check();
      await success.getByRole("button").click();
      await expect.poll(() => left(panel)).toBe("2 questions are left.");
      const answers = await saved(page, "Save the answers");
      expect(answers.name).toBe("answers.json");
      expect(JSON.parse(answers.text)).toEqual({ "Success | value | x": "yes" });
      await panel.getByRole("button", { name: "Undo" }).click();
      await expect.poll(() => left(panel)).toBe("3 questions are left.");
      await drop(page, "kept.json", '{"Success | value | x": "perhaps"}');
      await expect.poll(() => page.getByRole("alert").innerText()).toContain("must be one of");
      expect(await left(panel)).toBe("3 questions are left.");
      await drop(page, "kept.json", answers.text);
      await expect.poll(() => left(panel)).toBe("2 questions are left.");
    }));

  it("shows and saves what was read as what, without a name", () =>
    withSheet(async (page, panel) => {
      await panel.getByText("What was read as what, and why").click();
      await panel.locator(".log tbody tr").first().waitFor();
      const log = await saved(page, "Save the log");
      expect(log.name).toBe("reading-log.csv");
      expect(log.text).toContain("Rows,Column,Found,Read as,Why");
      expect(log.text).not.toMatch(names);
    }));

  it("keeps the answers over a new version and says what changed and which numbers moved", () =>
    withSheet(async (page, panel) => {
      const success = panel.locator("form", { hasText: "rows 3, 4" });
      await success.getByRole("radio", { name: "yes", exact: true }).check();
      await success.getByRole("button").click();
      await expect.poll(() => left(panel)).toBe("2 questions are left.");
      await panel.getByRole("button", { name: "Count these cases" }).click();
      await expect.poll(() => page.locator("#how-often .answer").innerText()).toContain("3 of 4");
      await drop(
        page,
        "newer.csv",
        sheet.replace("H1,Ann Zorvia,L,2021-04-03,II,closed,yes", "H1,Ann Zorvia,L,2021-04-03,II,closed,no"),
      );
      const versions = page.locator(".versions");
      await versions.getByText("H1 (row 2), Success: yes -> no").waitFor();
      await expect.poll(() => left(panel)).toBe("2 questions are left.");
      await panel.getByRole("button", { name: "Count these cases" }).click();
      await versions.getByText("II, Succeeded: 1 of 1 -> 0 of 1").waitFor();
      expect(await axeViolations(page)).toEqual([]);
      await drop(page, "other.csv", sheet.replaceAll("\nH", "\nZ"));
      await versions.waitFor({ state: "hidden" });
      await expect.poll(() => left(panel)).toBe("3 questions are left.");
    }));

  it("saves a table to share, after saying which rows may be known again", () =>
    withSheet(async (page, panel) => {
      await panel.getByText("A table to share").click();
      await expect
        .poll(() => panel.locator(".unique").innerText())
        .toMatch(/^\d of 4 rows are the only ones of their kind/);
      const shared = await saved(page, "Save the table to share");
      expect(shared.name).toBe("cases-to-share.csv");
      expect(shared.text).toMatch(/^case,child,/);
      expect(shared.text).not.toMatch(/2021|H1/);
      expect(shared.text).not.toMatch(names);
    }));

  it.each(["light", "dark"] as const)("breaks no accessibility rule and fits a narrow %s screen", (colorScheme) =>
    withSheet(
      async (page, panel) => {
        await panel.getByText("What was read as what, and why").click();
        await panel.locator(".log table").waitFor();
        expect(await axeViolations(page)).toEqual([]);
        expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(360);
      },
      { colorScheme, viewport: { width: 360, height: 780 } },
    ),
  );
});
