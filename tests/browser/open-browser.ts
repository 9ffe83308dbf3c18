import { existsSync } from "node:fs";
import { type Browser, chromium } from "playwright-core";

const SWITCHES = [
  "--headless",
  "--no-sandbox",
  "--disable-gpu",
  "--disable-background-networking",
  "--disable-component-update",
  "--disable-sync",
];

const INSTALLED = ["/usr/bin/chromium", "/usr/bin/chromium-browser", "/usr/bin/google-chrome"];

/**
 * Opens Chromium: the one named by CHROMIUM_PATH, else an installed one, else the packed one.
 * @throws Error with one line that says what to do when there is none
 */
export async function openBrowser(): Promise<Browser> {
  const executablePath = process.env.CHROMIUM_PATH ?? INSTALLED.find(existsSync) ?? (await packedChromium());
  return chromium.launch({ executablePath, args: SWITCHES });
}

async function packedChromium(): Promise<string> {
  try {
    const { default: packed } = await import("@sparticuz/chromium");
    return await packed.executablePath();
  } catch (error) {
    throw new Error("No browser for the page tests: install chromium or set CHROMIUM_PATH to one.", {
      cause: error,
    });
  }
}
