// Signing in: a wrong PIN, the right one, too many wrong ones, and going out again.
import assert from "node:assert/strict";
import { after, before, test } from "node:test";
import { assertNone, barriers, cutOff, launch, pins, says, sideways, signIn, smallTargets, visitor } from "./station.mjs";

const limit = { timeout: 120_000 };

let browser;
before(async () => (browser = await launch()));
after(() => browser?.close());

for (const script of [true, false]) {
  const how = script ? "" : ", without script";

  test(`a wrong PIN is refused, the right one leads back to the page one came from${how}`, limit, async () => {
    const { context, page, faults } = await visitor(browser, { script });
    await signIn(page, "LV", "111111", "/make/chilli-lime-butter");
    await page.locator("main .problem").waitFor();
    assert.equal(await says(page.locator("main .problem")), "This name and this PIN do not go together.");
    assert.equal(await page.locator("header .who form").count(), 0);
    await page.locator("#pin").fill(pins.LV);
    await page.locator("form.pin button").click();
    await page.waitForURL("**/make/chilli-lime-butter");
    assert.match(await says(page.locator("header .who form")), /^LV · Sign out$/);
    await page.locator("header .who button").click();
    await page.locator('header .who a[href^="/sign-in"]').waitFor();
    assertNone(faults);
    await context.close();
  });
}

for (const script of [true, false])
  test(`what was typed before a session ended is recorded after signing in${script ? "" : ", without script"}`, limit, async () => {
    const { context, page, faults } = await visitor(browser, { script });
    await signIn(page, "LV");
    await page.locator("header .who form").waitFor();
    await page.goto("/rounds");
    await page.getByLabel("What was checked").fill("the drain of the pot wash");
    await page.getByRole("radio", { name: "in order", exact: true }).check();
    await context.clearCookies();
    await page.locator("form.check button").click();
    await page.locator("#pin").waitFor();
    if (script) await assertOpen(page);
    await page.locator("#name").selectOption("RT");
    await page.locator("#pin").fill(pins.RT);
    await page.locator("form.pin button").click();
    await page.locator("form.again").waitFor();
    if (script) await assertOpen(page);
    assert.match(await says(page.locator("form.again")), /what: the drain of the pot wash/);
    await page.locator("form.again button").click();
    await page.locator(".done").waitFor();
    await page.goto("/day/2026-11-25");
    assert.match(await says(page.locator("main")), /the drain of the pot wash/);
    assertNone(faults);
    await context.close();
  });

// Nobody is shut out of it.
async function assertOpen(page) {
  assertNone(await barriers(page));
  assertNone(await smallTargets(page));
  assertNone(await cutOff(page));
  assert.equal(await sideways(page), 0);
}

test("five wrong PINs lock that person out, and nobody else", limit, async () => {
  const { context, page, faults } = await visitor(browser);
  for (let tries = 0; tries < 5; ++tries) await signIn(page, "AB", "000000");
  await page.locator("main .problem").waitFor();
  await signIn(page, "AB");
  await page.locator("main .problem").waitFor();
  assert.match(await says(page.locator("main .problem")), /^Too many wrong PINs\. Wait until \d\d:\d\d\.$/);
  assert.equal(await page.locator("header .who form").count(), 0);
  await signIn(page, "JO");
  await page.locator("header .who form").waitFor();
  assertNone(faults);
  await context.close();
});

test("after signing in nobody is led away from the station", limit, async () => {
  const { context, page, faults } = await visitor(browser);
  await signIn(page, "JO", pins.JO, "//elsewhere.invalid/");
  await page.locator("header .who form").waitFor();
  assert.equal(new URL(page.url()).pathname, "/");
  assertNone(faults);
  await context.close();
});

test("a strong word that is wrong lets nobody in", limit, async () => {
  const { context, page } = await visitor(browser);
  await page.goto("/sign-in?name=JO&back=/");
  await page.locator("form.pin summary").click();
  await page.locator("#strong").fill("no such word at all");
  await page.locator("#pin").fill(pins.JO);
  await page.locator("form.pin button").click();
  await page.locator("main .problem").waitFor();
  assert.equal(await page.locator("header .who form").count(), 0);
  await context.close();
});
