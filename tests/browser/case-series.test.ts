// The case series in a real browser: what it shows, that it stays on the computer, and that everyone can use it.
import { readFileSync } from "node:fs";
import { pathToFileURL } from "node:url";
import { writeXlsx } from "hucre";
import type { Locator, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { makeReport } from "../../src/cli/report/make-report.js";
import { axeViolations, projectRoot, testSite, type TestPage, type TestSite } from "./page.js";

let site: TestSite;
beforeAll(async () => {
  site = await testSite();
}, 120_000);
afterAll(() => site.close());

const drawn = async (page: Page): Promise<void> => {
  await page.waitForSelector("#how-often .picture svg");
  await page.waitForSelector("#missing .picture svg");
};
/** Opens the page, does something with it, and holds that nothing went wrong on the way. */
const withPage = async (
  use: (opened: Page) => Promise<void>,
  options?: Parameters<TestSite["open"]>[1],
): Promise<void> => {
  const { page, trouble }: TestPage = await site.open("case-series/", options);
  await drawn(page);
  await use(page);
  expect(trouble).toEqual([]);
  await page.context().close();
};
const choose = (page: Page, name: string, text: string): Promise<void> =>
  page.locator("#sheet-file").setInputFiles({ name, mimeType: "text/csv", buffer: Buffer.from(text) });

describe("the page of questions", () => {
  it("shows the invented cohort at once, without a violation of its policy and without a foreign request", () =>
    withPage(async (page) => {
      expect(await page.locator("h1").innerText()).toBe("Closed reduction of the upper humerus in adolescents");
      expect(await page.locator("header .line").innerText()).toContain("invented demo cohort");
      expect(await page.locator("#how-often .answer").innerText()).toContain("42 of 51");
      expect(await page.locator("#how-often .picture svg path").count()).toBeGreaterThanOrEqual(2 * 51);
    }));

  it("redraws the whole page when the level moves, and keeps the focus where it was", () =>
    withPage(async (page) => {
      const slider = page.locator("#level");
      const loss = await page.locator("#missing .answer").innerText();
      const picture = await page.locator("#how-often .picture svg").innerHTML();
      await slider.press("ArrowLeft");
      await expect.poll(() => slider.getAttribute("aria-valuetext")).toBe("94%");
      await expect.poll(() => page.locator("#how-often .answer").innerText()).toContain("94% CI");
      await expect.poll(() => page.locator("#missing .answer").innerText()).not.toBe(loss);
      await expect.poll(() => page.locator("#how-often .picture svg").innerHTML()).not.toBe(picture);
      expect(await page.evaluate(() => document.activeElement?.id)).toBe("level");
    }));

  it("counts another success when its rule is chosen", () =>
    withPage(async (page) => {
      await page.locator("#success-rule").selectOption("motion");
      await expect.poll(() => page.locator("#how-often .answer").innerText()).toContain("raised the arm");
    }));

  it("opens the cases behind a count by keyboard and gives the focus back", () =>
    withPage(async (page) => {
      const count = page.locator("#how-often .answer .count").first();
      await count.focus();
      await page.keyboard.press("Enter");
      const dialog = page.locator("dialog[open]");
      await dialog.waitFor();
      await expect.poll(() => dialog.locator("tbody tr").count()).toBe(51);
      expect(await dialog.locator("thead").innerText()).toMatch(/Case\s+Grade\s+First technique/);
      await page.keyboard.press("Escape");
      await dialog.waitFor({ state: "hidden" });
      await expect.poll(() => count.evaluate((node) => node === document.activeElement)).toBe(true);
    }));

  it("copies text and table, and saves figure and table", () =>
    withPage(
      async (page) => {
        const section = page.locator("#how-often");
        const clipboard = (type: string): Promise<string> =>
          page.evaluate(async (wanted) => {
            const [item] = await navigator.clipboard.read();
            return (await item!.getType(wanted)).text();
          }, type);
        await section.getByRole("button", { name: "Copy text: How often" }).click();
        await page.getByText("Text copied").waitFor();
        expect(await clipboard("text/plain")).toContain("Treatment succeeded in 42 of 51 shoulders");
        await section.getByRole("button", { name: "Copy table: How often" }).click();
        await page.getByText("Table copied").waitFor();
        expect(await clipboard("text/plain")).toMatch(/^Grade\tSucceeded\tShare/);
        expect(await clipboard("text/html")).toContain("<th");

        const saved = async (name: string): Promise<{ name: string; bytes: Buffer }> => {
          const [download] = await Promise.all([
            page.waitForEvent("download"),
            section.getByRole("button", { name }).click(),
          ]);
          return { name: download.suggestedFilename(), bytes: readFileSync(await download.path()) };
        };
        const svg = await saved("Save SVG");
        expect(svg.bytes.toString()).toMatch(/^<svg [^>]*role="img"><title>How often did it work\?<\/title><desc>/);
        const png = await saved("Save PNG");
        expect(png.name).toMatch(/-300dpi\.png$/);
        expect(png.bytes.readUInt32BE(png.bytes.indexOf("pHYs") + 4)).toBe(11811);
        await section.locator("summary").click();
        expect((await saved("Save CSV")).bytes.toString()).toContain("Succeeded");
      },
      { permissions: ["clipboard-read", "clipboard-write"] },
    ));
});

describe("its files", () => {
  const written = () =>
    makeReport(`${projectRoot}data-demo/cohort.csv`, { plan: `${projectRoot}data-demo/cohort-plan.json` });
  const savedBy = async (page: Page, button: Locator): Promise<{ name: string; text: string }> => {
    const [download] = await Promise.all([page.waitForEvent("download"), button.click()]);
    return { name: download.suggestedFilename(), text: readFileSync(await download.path(), "utf8") };
  };
  // A browser asks its user before it takes an eleventh file from one page.
  const filesAPage = 8;
  it("are the very bytes that the command line writes: figures", async () => {
    const { files } = await written();
    const figures = [...files.keys()].filter((name) => name.endsWith(".svg"));
    for (let from = 0; from < figures.length; from += filesAPage)
      await withPage(async (page) => {
        await expect.poll(() => page.getByRole("button", { name: "Save SVG" }).count()).toBe(figures.length);
        const buttons = await page.getByRole("button", { name: "Save SVG" }).all();
        for (const button of buttons.slice(from, from + filesAPage)) {
          const { name, text } = await savedBy(page, button);
          expect(text, name).toBe(files.get(`figures/${name}`));
        }
      });
  });
  it("are the very bytes that the command line writes: tables", () =>
    withPage(async (page) => {
      const { files } = await written();
      const section = page.locator("#how-often");
      await section.locator("summary").click();
      const { text } = await savedBy(page, section.getByRole("button", { name: "Save CSV" }));
      expect(text).toBe(files.get("tables/how-often.csv"));
    }));
});

describe("a sheet of one's own", () => {
  const sheet =
    "ID,Grade,First technique,Final technique,Success\na,I,closed,closed,yes\nb,II,open,open,no\nc,II,closed,closed,yes\n";
  it("is counted after its columns were confirmed", () =>
    withPage(async (page) => {
      await choose(page, "mine.csv", sheet);
      const panel = page.locator(".reading");
      await panel.getByText("What does each column mean?").waitFor();
      await expect.poll(() => page.locator("#how-often").isVisible()).toBe(false);
      expect(await panel.getByLabel("Meaning of Grade").inputValue()).toBe("grade");
      expect(await panel.locator("tr", { hasText: "First technique" }).innerText()).toContain("closed, open");
      await panel.getByRole("button", { name: "Count these cases" }).click();
      await expect.poll(() => page.locator("#how-often .answer").innerText()).toContain("2 of 3");
    }));

  it("may be a workbook, and may be dropped anywhere on the page", () =>
    withPage(async (page) => {
      const rows = sheet
        .trim()
        .split("\n")
        .map((line) => line.split(","));
      const workbook = Buffer.from(await writeXlsx({ sheets: [{ name: "Cases", rows }] })).toString("base64");
      await page.evaluate((content) => {
        const bytes = Uint8Array.from(atob(content), (character) => character.charCodeAt(0));
        const dataTransfer = new DataTransfer();
        dataTransfer.items.add(new File([bytes], "mine.xlsx"));
        document.querySelector("footer")!.dispatchEvent(new DragEvent("drop", { dataTransfer, bubbles: true }));
      }, workbook);
      await page.locator(".reading").getByText("What does each column mean?").waitFor();
      await expect.poll(() => page.locator("h1").innerText()).toBe("mine.xlsx");
      await page.getByRole("button", { name: "Count these cases" }).click();
      await expect.poll(() => page.locator("#how-often .answer").innerText()).toContain("2 of 3");
    }));

  it("is refused with file and rule when it cannot be read, and the page stays as it was", () =>
    withPage(async (page) => {
      await choose(page, "empty.csv", "");
      await expect.poll(() => page.getByRole("alert").innerText()).toContain("empty.csv");
      expect(await page.locator("#how-often .answer").innerText()).toContain("42 of 51");
      await choose(page, "nograde.csv", "ID,Success\na,yes\nb,no\n");
      await expect.poll(() => page.getByRole("alert").innerText()).toContain("no column holds a grade");
    }));

  it("stays text, whatever it says", () =>
    withPage(async (page) => {
      const evil = '<img src=x name=evil onerror="alert(1)">';
      const quoted = `"${evil.replaceAll('"', '""')}"`;
      const text = `ID,Grade,First technique,Success,${quoted}\n${quoted},${quoted},closed,yes,${quoted}\n=1+1,II,open,no,x\n`;
      await choose(page, "<b class=evil>.csv", text);
      await page.locator(".reading").getByText("What does each column mean?").waitFor();
      const confirm = page.getByRole("button", { name: "Count these cases" });
      await confirm.click();
      await page.locator("#how-often .count").first().click();
      await page.locator("dialog[open]").waitFor();
      expect(await page.locator("[name=evil], .evil, [onerror]").count()).toBe(0);
      await expect.poll(() => page.locator(".reading").textContent()).toContain(evil);
    }));
});

describe("for everyone", () => {
  it("breaks no accessibility rule with everything unfolded and a list of cases open", () =>
    withPage(
      async (page) => {
        await page.evaluate(() => {
          for (const fold of document.querySelectorAll("details")) fold.open = true;
        });
        await page.locator("#missing table").first().waitFor();
        await page.locator("#how-often .count").first().click();
        await page.locator("dialog[open] tbody tr").first().waitFor();
        expect(await axeViolations(page)).toEqual([]);
      },
      { colorScheme: "dark" },
    ));

  it("prints light on A4 from a dark screen, without its controls and with its tables", () =>
    withPage(
      async (page) => {
        await page.evaluate(() => window.dispatchEvent(new Event("beforeprint")));
        await page.emulateMedia({ media: "print", colorScheme: "dark" });
        await expect
          .poll(() => page.evaluate(() => getComputedStyle(document.body).backgroundColor))
          .toBe("rgb(255, 255, 255)");
        for (const control of [".drop", "#level", ".bar", "nav"])
          await expect.poll(() => page.locator(control).first().isVisible(), { message: control }).toBe(false);
        await expect.poll(() => page.locator("#how-often table").isVisible()).toBe(true);
      },
      { colorScheme: "dark" },
    ));
});

describe("as one file", () => {
  it("redraws when it was opened from disk", async () => {
    const { page, trouble } = await site.open(pathToFileURL(`${projectRoot}dist/single/case-series.html`).href);
    await drawn(page);
    await page.locator("#level").press("ArrowRight");
    await expect.poll(() => page.locator("#how-often .answer").innerText()).toContain("96% CI");
    expect(trouble).toEqual([]);
  });
});
