// A Chromium-family browser for the page tests: named, in one of the usual places, from the system, or downloaded.
import { spawnSync } from "node:child_process";
import { existsSync } from "node:fs";
import { homedir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";

const programs = process.env.ProgramFiles ?? "C:\\Program Files";
const programs86 = process.env["ProgramFiles(x86)"] ?? "C:\\Program Files (x86)";
const local = process.env.LOCALAPPDATA ?? join(homedir(), "AppData", "Local");
const usual = {
  linux: [
    ...["chromium", "chromium-browser", "google-chrome-stable", "google-chrome", "microsoft-edge", "brave-browser"].map(
      (name) => `/usr/bin/${name}`,
    ),
    "/usr/lib/chromium/chromium",
    "/snap/bin/chromium",
  ],
  darwin: ["", homedir()].flatMap((base) =>
    ["Google Chrome", "Chromium", "Microsoft Edge", "Brave Browser"].map(
      (name) => `${base}/Applications/${name}.app/Contents/MacOS/${name}`,
    ),
  ),
  win32: [programs, programs86, local].flatMap((base) => [
    join(base, "Google", "Chrome", "Application", "chrome.exe"),
    join(base, "Microsoft", "Edge", "Application", "msedge.exe"),
    join(base, "Chromium", "Application", "chrome.exe"),
  ]),
};

/** Path of a browser that is there; undefined when none is. @throws Error when BROWSER_PATH names none */
export function browserAtHand() {
  const named = process.env.BROWSER_PATH;
  if (named) {
    if (!existsSync(named)) throw new Error(`BROWSER_PATH names no file: ${named}`);
    return named;
  }
  return usual[process.platform]?.find((path) => existsSync(path));
}

/** Path of a browser, fetched when none is there, saying what is done. @throws Error with what to do when all fails */
export async function browserForTests(say) {
  const found = browserAtHand() ?? fromSystem(say) ?? (await downloaded(say));
  if (found) return found;
  throw new Error(
    "No Chromium-family browser was found and none could be fetched. Install Chromium, Chrome or Edge, or set BROWSER_PATH to one, and run again.",
  );
}

/** Only where this needs no password: as root on a system with apt, dnf or apk. */
function fromSystem(say) {
  if (process.platform !== "linux" || process.getuid?.() !== 0) return undefined;
  const managers = [
    {
      manager: "apt-get",
      calls: [
        ["update", "-q"],
        ["install", "-y", "-q", "--no-install-recommends", "chromium"],
      ],
    },
    { manager: "dnf", calls: [["install", "-y", "-q", "chromium"]] },
    { manager: "apk", calls: [["add", "-q", "chromium"]] },
  ];
  const env = { ...process.env, DEBIAN_FRONTEND: "noninteractive" };
  for (const { manager, calls } of managers) {
    if (spawnSync(manager, ["--version"], { stdio: "ignore" }).status !== 0) continue;
    say(`No browser found; installing chromium with ${manager}.`);
    if (calls.every((args) => spawnSync(manager, args, { stdio: "inherit", env }).status === 0)) return browserAtHand();
    say(`${manager} could not install it.`);
  }
  return undefined;
}

async function downloaded(say) {
  const { chromium } = await import("playwright-core");
  if (existsSync(chromium.executablePath())) return chromium.executablePath();
  say("Downloading Chromium with playwright-core.");
  const cli = join(fileURLToPath(new URL("..", import.meta.url)), "node_modules", "playwright-core", "cli.js");
  const { status } = spawnSync(process.execPath, [cli, "install", "chromium"], { stdio: "inherit" });
  return status === 0 && existsSync(chromium.executablePath()) ? chromium.executablePath() : undefined;
}
