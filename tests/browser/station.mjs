// The station as the tests meet it: a browser, the sizes of its screens, what a visitor sees go wrong, and signing in.
import assert from "node:assert/strict";
import { execFileSync } from "node:child_process";
import { mkdtempSync, readFileSync, readdirSync, rmSync } from "node:fs";
import { createRequire } from "node:module";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { chromium } from "playwright-core";

export const station = new URL(process.env.LARDINER_STATION);
export const kitchen = process.env.LARDINER_KITCHEN;
export const program = process.env.LARDINER_PROGRAM;

export const sizes = [
  { name: "a narrow phone", width: 320, height: 640 },
  { name: "a phone", width: 390, height: 844 },
  { name: "a tablet", width: 1024, height: 768 },
  { name: "the wall", width: 1920, height: 1080 },
];

export const pins = { MK: "482913", JO: "730164", LV: "915027", RT: "268450", AB: "604381" };

const axe = readFileSync(createRequire(import.meta.url).resolve("axe-core/axe.min.js"), "utf8");

export const launch = () => chromium.launch({ executablePath: "/usr/bin/chromium", args: ["--no-sandbox"] });

// A browser of its own: nobody is signed in, nothing is kept. `faults` are filled while its pages are used.
export async function visitor(browser, { width = 390, height = 844, script = true, state } = {}) {
  const context = await browser.newContext({
    viewport: { width, height },
    javaScriptEnabled: script,
    storageState: state,
    baseURL: station.origin,
  });
  const faults = [];
  context.on("request", (request) => {
    const asked = new URL(request.url());
    if (asked.protocol !== "data:" && asked.origin !== station.origin) faults.push(`asks another host: ${asked}`);
  });
  context.on("requestfailed", (request) => {
    // A PDF is taken as a download: the page's own request ends there.
    if (request.failure()?.errorText !== "net::ERR_ABORTED") faults.push(`not loaded: ${request.url()}`);
  });
  context.on("weberror", (error) => faults.push(`script: ${error.error()}`));
  context.on("console", (message) => {
    // Chromium writes a line of its own for a page that answers 403, 404 or 422, which such pages are meant to do.
    const ofStatus = /^Failed to load resource: the server responded with a status of 4\d\d/;
    const ofPage = message.location().url === message.page()?.url();
    if (message.type() === "error" && !(ofPage && ofStatus.test(message.text()))) faults.push(`console: ${message.text()}`);
  });
  const page = await context.newPage();
  page.setDefaultTimeout(15_000);
  return { context, page, faults };
}

export async function signIn(page, initials, pin = pins[initials], back = "/") {
  await page.goto(`/sign-in?back=${encodeURIComponent(back)}`);
  await page.locator(`ul.people a[href*="name=${initials}&"]`).click();
  await page.locator("#pin").fill(pin);
  await page.locator("main form.pin button").click();
}

// Signed in as somebody, for other visitors to begin with.
export async function stateOf(browser, initials) {
  const { context, page } = await visitor(browser);
  await signIn(page, initials);
  await page.locator("header .who form").waitFor();
  const state = await context.storageState();
  await context.close();
  return state;
}

// WCAG 2.2 AA as far as axe-core can tell: https://www.w3.org/TR/WCAG22/
export async function barriers(page) {
  await page.evaluate(axe);
  const found = await page.evaluate(async () => {
    const tags = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22a", "wcag22aa", "best-practice"];
    return (await axe.run(document, { runOnly: tags })).violations;
  });
  return found.flatMap((rule) => rule.nodes.map((node) => `${rule.id}: ${node.html} (${node.failureSummary})`));
}

// How far a page can be pushed sideways, in CSS pixels.
export const sideways = (page) =>
  page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);

// Buttons, fields, and links that are not part of a sentence, less than 44 CSS px wide or high: WCAG 2.2, 2.5.5.
export const smallTargets = (page) =>
  page.evaluate(() => {
    const all = document.querySelectorAll("a:not(.skip), button, select, input:not([type=hidden]), summary");
    return [...all].flatMap((one) => {
      const target = one.matches("[type=radio], [type=checkbox]") ? one.closest("label") : one;
      const box = target.getBoundingClientRect();
      const seen = box.width > 0 && box.height > 0;
      return seen && (box.width < 43.9 || box.height < 43.9) ? [`${one.outerHTML.slice(0, 120)} ${box.width}×${box.height}`] : [];
    });
  });

// Text that the box it stands in cuts off; what is there for screen readers alone is not in a box.
export const cutOff = (page) =>
  page.evaluate(() =>
    [...document.querySelectorAll("main :not(.unseen), header *")].flatMap((one) => {
      const style = getComputedStyle(one);
      const cuts = style.overflowX !== "visible" && !one.matches("input, select, textarea, img, svg");
      return cuts && one.scrollWidth > one.clientWidth + 1 ? [one.outerHTML.slice(0, 120)] : [];
    }),
  );

// What a part of a page says, every kind and number of spaces as one.
export const says = async (part) => (await part.innerText()).replace(/\s+/g, " ").trim();

// The texts of the codes on a PDF's pages, as zbar reads them.
export function codesOf(pdf) {
  const folder = mkdtempSync(join(tmpdir(), "browser-"));
  try {
    execFileSync("pdftoppm", ["-r", "300", "-gray", "-png", pdf, join(folder, "page")]);
    const pictures = readdirSync(folder).map((name) => join(folder, name));
    const read = execFileSync("zbarimg", ["--quiet", "--raw", "-Sdisable", "-Sqrcode.enable", ...pictures], { encoding: "utf8", stdio: ["ignore", "pipe", "ignore"] });
    return read.trim().split("\n");
  } finally {
    rmSync(folder, { recursive: true });
  }
}

// Runs a command of the program on the demo kitchen, at the time of the station.
export const lardiner = (...words) =>
  execFileSync(program, ["--kitchen", kitchen, "--at", "2026-11-25T21:50", ...words], { encoding: "utf8" });

export function assertNone(list, what) {
  assert.deepEqual(list, [], what);
}
