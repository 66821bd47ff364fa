// The picture of the README, taken from the built pages: node notebooks/build/screenshot.mjs
import { chromium } from "playwright-core";
import { browserForTests } from "../../tests/find-browser.mjs";
import { notebooksRoot } from "./folders.mjs";
import { projectRoot, say } from "./installed.mjs";
import { serve } from "./serve.mjs";

const path = `${notebooksRoot}case-series.png`;
const { port, close } = await serve(`${projectRoot}dist/pages`, { port: 0 });
const browser = await chromium.launch({
  executablePath: await browserForTests(say),
  args: process.getuid?.() === 0 ? ["--no-sandbox"] : [],
});
const page = await browser.newPage({ viewport: { width: 1320, height: 900 }, colorScheme: "light" });
await page.goto(`http://127.0.0.1:${port}/case-series/`);
const pictures = page.locator(".question:nth-child(-n + 3) .picture svg");
await pictures.nth(2).waitFor();
await page
  .locator(".question")
  .first()
  .evaluate((question) => question.scrollIntoView());
await page.screenshot({ path });
await browser.close();
await close();
say(`Saved ${path}`);
