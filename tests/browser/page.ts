import { existsSync, readdirSync, statSync } from "node:fs";
import { readFile } from "node:fs/promises";
import { execFile } from "node:child_process";
import { createRequire } from "node:module";
import { fileURLToPath } from "node:url";
import { promisify } from "node:util";
import { chromium, type Browser, type BrowserContextOptions, type Page } from "playwright-core";
import { serve } from "../../notebooks/build/serve.mjs";
import { browserForTests } from "../find-browser.mjs";

export const projectRoot = fileURLToPath(new URL("../../", import.meta.url));

/** A page under test, with everything it did that a page of the kit must not do. */
export interface TestPage {
  readonly page: Page;
  /** Violations of the policy, errors, requests to other places; empty when all is well. */
  readonly trouble: string[];
}

export interface TestSite {
  /** @param before script that runs before those of the page */
  readonly open: (path: string, options?: BrowserContextOptions, before?: string) => Promise<TestPage>;
  readonly close: () => Promise<void>;
}

/** Built pages on a free port and a browser. The pages are built anew when they are out of date. */
export async function testSite(): Promise<TestSite> {
  if (process.env["PAGES_BUILT"] === undefined && stale())
    await promisify(execFile)(process.execPath, ["notebooks/build/build-pages.mjs"], { cwd: projectRoot });
  const server = await serve(`${projectRoot}dist/pages`, { port: 0 });
  const browser = await launch();
  return {
    open: (path, options, before) => openPage(browser, `http://127.0.0.1:${server.port}/`, path, options, before),
    async close() {
      await browser.close();
      await server.close();
    },
  };
}

/** Something in the sources is newer than the built pages. */
function stale(): boolean {
  const single = `${projectRoot}dist/single`;
  if (!existsSync(single) || readdirSync(single).length === 0) return true;
  const built = Math.min(...readdirSync(single).map((name) => statSync(`${single}/${name}`).mtimeMs));
  return ["src", "notebooks", "data-demo"].some((folder) =>
    readdirSync(projectRoot + folder, { recursive: true, encoding: "utf8" }).some(
      (name) => statSync(`${projectRoot}${folder}/${name}`).mtimeMs > built,
    ),
  );
}

async function launch(): Promise<Browser> {
  return chromium.launch({
    executablePath: await browserForTests((message) => process.stderr.write(`${message}\n`)),
    args: [
      "--disable-gpu",
      "--disable-background-networking",
      "--no-first-run",
      ...(process.getuid?.() === 0 ? ["--no-sandbox"] : []),
    ],
  });
}

async function openPage(
  browser: Browser,
  site: string,
  path: string,
  options: BrowserContextOptions = {},
  before = "",
): Promise<TestPage> {
  const address = path.startsWith("file:") ? path : site + path;
  const context = await browser.newContext({
    viewport: { width: 1280, height: 900 },
    acceptDownloads: true,
    ...options,
  });
  const page = await context.newPage();
  const trouble: string[] = [];
  page.on("console", (message) => message.type() === "error" && trouble.push(message.text()));
  page.on("pageerror", (error) => trouble.push(error.message));
  page.on("dialog", (dialog) => trouble.push(`dialog: ${dialog.message()}`));
  page.on("request", (request) => {
    const own = path.startsWith("file:") ? request.url() === address : request.url().startsWith(site);
    if (!own && !/^(data|blob):/.test(request.url())) trouble.push(`request: ${request.url()}`);
  });
  await page.addInitScript(before);
  await page.goto(address);
  return { page, trouble };
}

/** Ids of the accessibility rules that the page breaks, with where. */
export async function axeViolations(page: Page): Promise<string[]> {
  await page.evaluate(await readFile(createRequire(import.meta.url).resolve("axe-core/axe.min.js"), "utf8"));
  return page.evaluate(async () => {
    interface Violation {
      readonly id: string;
      readonly nodes: readonly { readonly target: readonly string[] }[];
    }
    const { axe } = globalThis as unknown as {
      axe: { run: (node: Document) => Promise<{ violations: readonly Violation[] }> };
    };
    const { violations } = await axe.run(document);
    return violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ target }) => target.join(" ")).join(", ")}`);
  });
}
