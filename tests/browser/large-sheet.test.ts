// A large sheet in a real browser: it is read beside the page, which stays alive, shows how far it is, and can give it up.
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { pathToFileURL } from "node:url";
import type { Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { readCases } from "../../src/cases/read-cases.js";
import { readSheet } from "../../src/cases/read-sheet.js";
import { largeSheet } from "../large-sheet.js";
import { projectRoot, testSite, type TestSite } from "./page.js";

let site: TestSite;
/** A file on disk: the browser would stand still while it takes 12 MB from the test. */
let large: string;
beforeAll(async () => {
  large = join(mkdtempSync(join(tmpdir(), "large-sheet-")), "large.csv");
  writeFileSync(large, largeSheet(100_000));
  site = await testSite();
}, 120_000);
afterAll(async () => {
  rmSync(dirname(large), { recursive: true });
  await site.close();
});

const oneFile = pathToFileURL(`${projectRoot}dist/single/case-series.html`).href;
/** The page with its demo counted; what it does from then on is held against it. */
const withPage = async (
  use: (page: Page) => Promise<void>,
  { path = "case-series/", before = "" }: { readonly path?: string; readonly before?: string } = {},
): Promise<void> => {
  const { page, trouble } = await site.open(path, {}, before);
  await page.waitForSelector("#missing .picture svg");
  await use(page);
  expect(trouble).toEqual([]);
  await page.context().close();
};
const choose = (page: Page, name: string, content: string | Buffer): Promise<void> =>
  page.locator("#sheet-file").setInputFiles({ name, mimeType: "text/csv", buffer: Buffer.from(content) });
const asked = (page: Page): Promise<void> =>
  page.locator(".reading").getByText("What does each column mean?").waitFor({ timeout: 80_000 });
const alert = (page: Page): Promise<string> => page.getByRole("alert").innerText();
const answer = (page: Page): Promise<string> => page.locator("#how-often .answer").innerText();

/** Notes from now on the longest time that the page stood still (milliseconds), and what it said of its progress. */
const watch = (page: Page): Promise<void> =>
  page.evaluate(() => {
    const noted = { longest: 0, said: [] as string[] };
    Object.assign(window, { noted });
    new PerformanceObserver((list) => {
      for (const { duration } of list.getEntries()) noted.longest = Math.max(noted.longest, duration);
    }).observe({ type: "longtask" });
    const status = document.querySelector(".working [role=status]")!;
    new MutationObserver(() => noted.said.push(status.textContent)).observe(status, { childList: true });
  });
const noted = (page: Page): Promise<{ longest: number; said: string[] }> =>
  page.evaluate(() => (window as unknown as { noted: { longest: number; said: string[] } }).noted);

describe("100,000 rows of 20 columns", () => {
  it("are read, drawn and counted while the page stays alive", () =>
    withPage(async (page) => {
      await watch(page);
      await page.locator("#sheet-file").setInputFiles(large);
      await page.getByRole("button", { name: "Cancel" }).waitFor();
      await asked(page);
      const { longest, said } = await noted(page);
      expect(longest).toBeLessThan(200);
      expect(said).toContain("Reading large.csv: 20%");
      expect(said.filter((text) => /: [3-9]0%$/.test(text)).length).toBeGreaterThan(2);
      expect(await page.locator(".legend").innerText()).toMatch(
        /read: 1,900,000\s+asked about: 0\s+set aside: 100,020\s+all cells: 2,000,020/,
      );
      expect(await page.locator(".cell-map svg [class^=cell-]").count()).toBeLessThan(20);
      await page.getByRole("button", { name: "Count these cases" }).click();
      await page.getByText("60000 of 100000 limbs").first().waitFor({ timeout: 80_000 });
      await page.locator("#how-often .count").first().click();
      await page.getByText("The first 200 cases; 99800 more are counted").waitFor();
      expect(await page.locator("dialog tbody tr").count()).toBe(200);
      await page.keyboard.press("Escape");
      await page.getByText(/^39800 more rows are in the saved table/).waitFor();
      expect(await page.evaluate(() => document.querySelectorAll("*").length)).toBeLessThan(20_000);
    }));

  it("are given up on request, and the page shows what it showed", () =>
    withPage(async (page) => {
      await page.locator("#sheet-file").setInputFiles(large);
      await page.getByRole("button", { name: "Cancel" }).click();
      await page.getByRole("button", { name: "Cancel" }).waitFor({ state: "hidden" });
      await page.getByText("Given up").waitFor();
      expect(await answer(page)).toContain("42 of 51");
      expect(await alert(page)).toBe("");
      await page.locator("#sheet-file").setInputFiles(large);
      await page.getByRole("button", { name: "Cancel" }).waitFor();
      await choose(page, "small.csv", largeSheet(7));
      await asked(page);
      expect(await page.locator("h1").innerText()).toBe("small.csv");
      await page.getByRole("button", { name: "Cancel" }).waitFor({ state: "hidden" });
    }));
});

describe("a sheet of middle size", () => {
  const text = `${largeSheet(3000).replace("H100007,", "H100007?,").replace(",II,closed", ",2-3,closed")}Total,,,,,,,,,,,,2250\n`;
  it.each([
    ["on the served page", {}],
    ["in the one file, opened from disk", { path: oneFile }],
    ["where workers are refused", { before: "delete window.Worker" }],
  ])("is read as the command line reads it, %s", (_, options) =>
    withPage(async (page) => {
      const table = readCases(await readSheet(new TextEncoder().encode(text), "middle.csv"));
      await choose(page, "middle.csv", text);
      await asked(page);
      const legend = (await page.locator(".legend li").allInnerTexts()).map((words) =>
        Number(/[\d,]+$/.exec(words)![0].replaceAll(",", "")),
      );
      const { understood, asked: open, setAside } = table.cells;
      expect(legend).toEqual([understood, open, setAside, understood + open + setAside]);
      const roles = await page
        .locator(".reading tbody select")
        .evaluateAll((all) => all.map((one) => (one as HTMLSelectElement).value));
      expect(roles).toEqual(table.columns.map(({ role }) => role));
      expect(table.questions.length).toBeGreaterThan(0);
      expect(await page.locator(".questions legend").allInnerTexts()).toEqual(
        table.questions.map(({ asks }) => expect.stringContaining(asks)),
      );
      for (const { row, why } of table.setAside) await page.getByText(`Row ${row}: ${why}`).waitFor();
    }, options),
  );
});

describe("a large file that is no sheet", () => {
  const noise = Buffer.alloc(3 * 2 ** 20, "PK\u0003\u0004 nothing of use ");
  const holed = Buffer.from(`${largeSheet(15_000)}H7,\u0000,no\n`);
  it.each([
    ["damaged.xlsx", noise],
    ["holed.csv", holed],
  ])("%s gets the message of the command line, and the page stays as it was", (name, content) =>
    withPage(async (page) => {
      const message = await (async () => readCases(await readSheet(new Uint8Array(content), name)))().then(
        () => "",
        (error: Error) => error.message,
      );
      expect(message).toContain(name);
      await choose(page, name, content);
      await expect.poll(() => alert(page), { timeout: 40_000 }).toBe(message);
      expect(await answer(page)).toContain("42 of 51");
    }),
  );
});
