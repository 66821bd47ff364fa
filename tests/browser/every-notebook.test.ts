// What holds of every notebook, tried on its built page and on its file: it needs nothing from elsewhere and serves everyone.
import { pathToFileURL } from "node:url";
import type { Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { notebookFolders } from "../../notebooks/build/folders.mjs";
import { axeViolations, projectRoot, testSite, type TestSite } from "./page.js";

let site: TestSite;
beforeAll(async () => {
  site = await testSite();
}, 120_000);
afterAll(() => site.close());

/** The page has its title, and every picture in sight is drawn. */
const ready = async (page: Page): Promise<void> => {
  await page.waitForSelector("h1:not(:empty)");
  await page.waitForFunction(() =>
    [...document.querySelectorAll(".picture")].every((one) => one.clientWidth === 0 || one.querySelector("svg")),
  );
};

describe.each(notebookFolders())("the notebook %s", (name) => {
  for (const colorScheme of ["light", "dark"] as const)
    it(`shows itself under the policy, without a foreign request, breaking no accessibility rule, ${colorScheme}`, async () => {
      const { page, trouble } = await site.open(`${name}/`, { colorScheme });
      await ready(page);
      expect(await axeViolations(page)).toEqual([]);
      expect(await page.locator("nav a[aria-current=page]").count()).toBe(1);
      expect(await page.locator("nav a").count()).toBe(notebookFolders().length);
      expect(await page.locator("footer .caution").innerText()).toContain("proves no cause and chooses no treatment");
      expect(trouble).toEqual([]);
      await page.context().close();
    });

  it("needs no sideways scrolling at 360 px, and its pictures fit", async () => {
    const { page, trouble } = await site.open(`${name}/`, { viewport: { width: 360, height: 740 } });
    await ready(page);
    const [wide, view] = await page.evaluate(() => [
      document.documentElement.scrollWidth,
      document.documentElement.clientWidth,
    ]);
    expect(wide).toBe(view);
    for (const svg of await page.locator(".picture svg").all())
      expect((await svg.boundingBox())?.width ?? 0).toBeLessThanOrEqual(view!);
    expect(trouble).toEqual([]);
    await page.context().close();
  });

  it("lets every control be reached by the keyboard, with the focus seen", async () => {
    const { page } = await site.open(`${name}/`);
    await ready(page);
    const controls =
      "a[href], button:visible:enabled, select:visible, input:visible, textarea:visible, summary:visible";
    const reachable = await page.locator(controls).count();
    const seen = new Set<string>();
    for (let press = 0; press < 2 * reachable + 20; press++) {
      await page.keyboard.press("Tab");
      const [key, outline] = await page.evaluate(() => {
        const node = document.activeElement!;
        const box = node.getBoundingClientRect();
        const place = `${node.tagName} ${Math.round(box.x)} ${Math.round(box.y + scrollY)} ${node.textContent}`;
        return [place, getComputedStyle(node).outlineStyle];
      });
      if (key!.startsWith("BODY")) break;
      expect(outline, key).not.toBe("none");
      seen.add(key!);
    }
    expect(seen.size).toBeGreaterThanOrEqual(reachable);
    await page.context().close();
  });

  it("is one file that opens from disk, allows its own script and style by their hashes, and asks for nothing", async () => {
    const { page, trouble } = await site.open(pathToFileURL(`${projectRoot}dist/single/${name}.html`).href);
    await ready(page);
    expect(await page.locator('meta[http-equiv="Content-Security-Policy"]').getAttribute("content")).toMatch(
      /^default-src 'none'; script-src 'sha256-[^']+'; style-src 'sha256-[^']+'; .*connect-src 'none'/,
    );
    expect(trouble).toEqual([]);
    await page.context().close();
  });
});
