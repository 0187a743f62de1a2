// Printing from the station on a real IPP printer: a batch made and printed in one press, and the code of the printed
// label opens its lot.
import assert from "node:assert/strict";
import { readdirSync } from "node:fs";
import { join } from "node:path";
import { after, before, test } from "node:test";
import { assertNone, barriers, codesOf, cutOff, launch, says, sideways, sizes, smallTargets, stateOf, visitor } from "./station.mjs";

const limit = { timeout: 120_000 };
const printed = process.env.LARDINER_PRINTED;

let browser;
const states = {};
before(async () => {
  browser = await launch();
  states.MK = await stateOf(browser, "MK");
});
after(() => browser?.close());

// A test label is printed and looked at.
async function load(page, medium) {
  await page.goto("/printers");
  await page.locator("#medium1").selectOption(medium);
  await page.locator("button[value=test]").last().click();
  await page.locator("button[value=loaded]").click();
  await page.waitForURL("**/printers");
  assert.match(await says(page.locator("main")), new RegExp(`In it: ${medium}`));
}

async function tried(page) {
  assertNone(await barriers(page));
  assertNone(await smallTargets(page));
  assertNone(await cutOff(page));
  assert.equal(await sideways(page), 0);
}

async function until(page, words) {
  for (let second = 0; second < 30; ++second) {
    if ((await says(page.locator(".verdict"))) === words) return;
    await page.waitForTimeout(1000);
    await page.reload();
  }
  assert.fail(`not said: ${words}, but ${await says(page.locator("main"))}`);
}

test("a batch is recorded and printed in one press, and the code on its label opens it", limit, async () => {
  const { context, page, faults } = await visitor(browser, { script: false, state: states.MK });
  await load(page, "lid");
  await page.goto("/make/chilli-lime-butter");
  await page.locator("#number").fill("81");
  await page.locator("#quantity").fill("1 kg");
  await page.locator("#containers").fill("2 tub 500 g");
  await page.locator('select[id="lot.butter-unsalted"]').selectOption("MB-5521");
  await page.locator("button[value=look]").click();
  const lot = await says(page.locator("#foreseen h2 .code"));
  await page.locator("#foreseen button[value=print]").click();
  await page.waitForURL("**/print/*");
  await until(page, "PRINTED");
  const files = readdirSync(printed).filter((name) => name.endsWith(".pdf") && !name.includes("test"));
  assert.equal(files.length, 1, files.join());
  const codes = codesOf(join(printed, files[0]));
  assert.equal(codes.length, 2);
  const address = new URL(codes[0]);
  await page.goto(address.pathname + address.search);
  assert.match(await says(page.locator("h1")), new RegExp(lot));
  assertNone(faults);
  await context.close();
});

test("labels that are not in the printer wait until they are, and can be given up", limit, async () => {
  const { context, page, faults } = await visitor(browser, { state: states.MK });
  await load(page, "lid");
  await page.goto("/lot/A26329CLB03L?item=chilli-lime-butter");
  await page.locator("#print_containers").fill("9");
  await page.locator("form.print #medium").selectOption("side");
  await page.locator("form.print button[value=print]").click();
  await page.waitForURL("**/print/*");
  await until(page, "THESE LABELS ARE NOT IN THE PRINTER");
  await page.locator('a[href$="?end=yes"]').click();
  await page.locator("button[value=leave]").click();
  await until(page, "NOT ALL WERE PRINTED");
  assertNone(faults);
  await context.close();
});

for (const size of sizes) {
  test(`printers and a print are accessible on ${size.name}`, limit, async () => {
    const { context, page } = await visitor(browser, { ...size, state: states.MK });
    await page.goto("/printers");
    await tried(page);
    await page.goto("/lot/A26329CLB03L?item=chilli-lime-butter");
    await page.locator("#print_containers").fill("10");
    await page.locator("form.print #medium").selectOption("case");
    await page.locator("form.print button[value=print]").click();
    await page.waitForURL("**/print/*");
    await page.goto(`${new URL(page.url()).pathname}?end=yes`);
    await tried(page);
    await page.locator("button[value=leave]").click();
    await context.close();
  });
}
