// Grading agreement in a real browser: what it shows, its worker under the policy, and a large file that does not hold it up.
import { pathToFileURL } from "node:url";
import type { Page } from "playwright-core";
import { afterAll, beforeAll, expect, it } from "vitest";
import { random } from "../../src/numeric/random.js";
import { axeViolations, projectRoot, testSite, type TestSite } from "./page.js";

let site: TestSite;
beforeAll(async () => {
  site = await testSite();
}, 120_000);
afterAll(() => site.close());

const withPage = async (path: string, use: (page: Page) => Promise<void>, width = 1280): Promise<void> => {
  const { page, trouble } = await site.open(path, { viewport: { width, height: 900 } });
  await page.waitForSelector("#why .picture svg");
  await use(page);
  expect(trouble).toEqual([]);
  await page.context().close();
};
const choose = (page: Page, name: string, text: string): Promise<void> =>
  page.locator("#sheet-file").setInputFiles({ name, mimeType: "text/csv", buffer: Buffer.from(text) });

it("shows the invented readings, opens a count to its radiographs, and moves with its controls", () =>
  withPage("agreement/", async (page) => {
    expect(await page.locator("h1").innerText()).toBe("Grading agreement: invented readings");
    const count = page.locator("#same .count").first();
    const listed = Number((await count.innerText()).split(" ")[0]);
    await count.click();
    await expect.poll(() => page.locator("dialog tbody tr").count()).toBe(listed);
    await page.keyboard.press("Escape");
    const found = await page.locator("#why .answer").innerText();
    await page.locator("#prevalence").press("Home");
    await expect.poll(() => page.locator("#why .answer").innerText()).not.toBe(found);
    await page.locator("#plan-kappa").press("End");
    await expect.poll(() => page.locator("#many .answer").innerText()).toContain("kappa of 0.95 to within 0.10");
    await page.locator("#plan-width").selectOption("0.4");
    await expect.poll(() => page.locator("#many .answer").innerText()).toContain("kappa of 0.95 to within 0.20");
    await page.locator("#pair").selectOption("0,1");
    await expect.poll(() => page.locator("#same .answer").innerText()).toContain("A1 and A2 gave the same grade");
    await page.locator("#cuts").fill("67, 10");
    await page.locator("#cuts").press("Enter");
    await expect.poll(() => page.locator("#cuts-rule").innerText()).toContain("Not taken");
    expect(await axeViolations(page)).toEqual([]);
  }));

it("opens as one file from the disk and fits a telephone", () =>
  withPage(
    pathToFileURL(`${projectRoot}dist/single/agreement.html`).href,
    async (page) => {
      expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(360);
    },
    360,
  ));

it("says what is wrong in a file and keeps what was shown", () =>
  withPage("agreement/", async (page) => {
    await choose(page, "own.csv", "film,A,B\n1,I,<img src=x onerror=alert(1)>\n2,II,II\n3,I,I\n");
    await expect.poll(() => page.locator(".error").innerText()).toContain('own.csv: row 2, column "B"');
    expect(await page.locator("#same .answer").innerText()).toContain("A1 and B1");
  }));

it("answers on 2,000 radiographs by five readers while the page stays responsive", () =>
  withPage("agreement/", async (page) => {
    const stream = random(4);
    const grade = (): number => Math.floor(4 * stream.uniform());
    const rows = Array.from({ length: 2000 }, (_, k) => {
      const truth = grade();
      const cells = [0, 1, 2, 3, 4].map(() =>
        stream.uniform() < 0.2 ? "" : (stream.uniform() < 0.75 ? truth : grade()) + 1,
      );
      return `${k + 1},${cells.join(",")}`;
    });
    // The longest time between two ticks of a clock on the page while the work is done.
    await page.evaluate(() => {
      const state = { last: performance.now(), longest: 0 };
      setInterval(() => {
        const now = performance.now();
        state.longest = Math.max(state.longest, now - state.last);
        state.last = now;
      }, 10);
      Object.assign(globalThis, { clockState: state });
    });
    const start = performance.now();
    await choose(page, "large.csv", `film,P,Q,R,S,T\n${rows.join("\n")}\n`);
    await expect.poll(() => page.locator("h1").innerText(), { timeout: 15_000 }).toContain("large.csv");
    // The goal is 2 s on a free machine; a shared one is given more.
    expect(performance.now() - start).toBeLessThan(10_000);
    const longest = await page.evaluate(
      () => (globalThis as unknown as { clockState: { longest: number } }).clockState.longest,
    );
    expect(longest).toBeLessThan(1500);
  }));
