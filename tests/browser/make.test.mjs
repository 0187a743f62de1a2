// Making a batch: looked at first, then recorded, and it is what was foreseen.
import assert from "node:assert/strict";
import { after, before, test } from "node:test";
import { assertNone, launch, says, stateOf, visitor } from "./station.mjs";

const limit = { timeout: 120_000 };

let browser;
const states = {};
before(async () => {
  browser = await launch();
  states.MK = await stateOf(browser, "MK");
});
after(() => browser?.close());

// Each input's first lot that is offered, and a date for what has none.
async function sayAllInputs(page) {
  for (const select of await page.locator("fieldset select").all()) {
    if ((await select.locator("option").count()) > 1) await select.selectOption({ index: 1 });
    else {
      const item = (await select.getAttribute("name")).slice("lot.".length);
      await page.locator(`[name="use_by.${item}"]`).fill("2026-12-10");
    }
  }
}

async function fillIn(page, number) {
  await page.goto("/make/chilli-lime-butter");
  await page.locator("#number").fill(number);
  await page.locator("#quantity").fill("2 kg");
  await page.locator("#containers").fill("4 tub 500 g");
  await page.locator('select[id="lot.butter-unsalted"]').selectOption("MB-5521");
}

for (const [script, number] of [[true, "71"], [false, "72"]]) {
  test(`a batch that is looked at and recorded has the lot and the use-by that were foreseen${script ? "" : ", without script"}`, limit, async () => {
    const { context, page, faults } = await visitor(browser, { script, state: states.MK });
    await page.goto("/make/sesame-seed-mix");
    await page.locator("#number").fill(number);
    await page.locator("#quantity").fill("2 kg");
    await page.locator("#containers").fill("4 tub 500 g");
    await sayAllInputs(page);
    await page.locator("button[value=look]").click();
    const foreseen = page.locator("#foreseen");
    await foreseen.waitFor();
    const lot = await says(foreseen.locator("h2 .code"));
    const until = await says(foreseen.locator(".until"));
    assert.match(lot, new RegExp(`^A26329[A-Z]{3}${number}.$`));
    assert.match(until, /^(use by|best before) \w{3} \d\d \w{3} 202\d$/i);
    assert.match(await says(foreseen), /CONTAINS sesame/i);
    assert.ok((await foreseen.locator("img.label").evaluate((picture) => picture.naturalWidth)) > 0);
    assert.equal((await page.request.get(`/lot/${lot}`)).status(), 404, "recorded by looking at it");
    await foreseen.locator("button[value=record]").click();
    await page.waitForURL(`**/lot/${lot}*`);
    assert.match(await says(page.locator("h1")), new RegExp(`^Sesame seed mix ${lot}`));
    const said = await says(page.locator(".group .until"));
    assert.ok(said.toLowerCase().includes(until.toLowerCase()), `${said}; foreseen: ${until}`);
    assert.match(await says(page.locator("ol.entries")), /made, MK/);
    assertNone(faults);
    await context.close();
  });
}

test("the key Enter looks at a batch, even when it was looked at before, and records nothing", limit, async () => {
  const { context, page } = await visitor(browser, { state: states.MK });
  await fillIn(page, "73");
  await page.locator("#quantity").press("Enter");
  await page.locator("#foreseen").waitFor();
  const lot = await says(page.locator("#foreseen h2 .code"));
  await page.locator("#quantity").fill("1 kg");
  await page.locator("#containers").fill("2 tub 500 g");
  const again = page.waitForResponse((reply) => reply.request().method() === "POST");
  await page.locator("#quantity").press("Enter");
  await again;
  await page.locator("#foreseen").waitFor();
  assert.equal((await page.request.get(`/lot/${lot}`)).status(), 404);
  await context.close();
});

test("what is wrong is said at the top, and what was filled in is still there", limit, async () => {
  const { context, page } = await visitor(browser, { state: states.MK });
  await fillIn(page, "74");
  await page.locator("#quantity").fill("a pot");
  await page.locator("button[value=look]").click();
  await page.locator("main .problem").waitFor();
  assert.match(await says(page.locator("main .problem")), /a pot/);
  assert.equal(await page.locator("#quantity").inputValue(), "a pot");
  assert.equal(await page.locator("#number").inputValue(), "74");
  assert.equal(await page.locator('select[id="lot.butter-unsalted"]').inputValue(), "MB-5521");
  assert.equal(await page.locator("#foreseen").count(), 0);
  await context.close();
});

test("a batch that has no date says so before it is recorded", limit, async () => {
  const { context, page } = await visitor(browser, { state: states.MK, script: false });
  await fillIn(page, "76");
  await page.locator("button[value=look]").click();
  assert.equal(await says(page.locator("#foreseen .undated")), "NO DATE IS KNOWN: DO NOT USE");
  await page.goto("/make/sesame-seed-mix");
  await page.locator("#quantity").fill("2 kg");
  await page.locator("#containers").fill("4 tub 500 g");
  await sayAllInputs(page);
  await page.locator("button[value=look]").click();
  await page.locator("#foreseen .until:not(:empty)").waitFor();
  assert.equal(await page.locator("#foreseen .undated").isVisible(), false);
  await context.close();
});

test("signed out, a batch cannot be recorded", limit, async () => {
  const { context, page } = await visitor(browser);
  await fillIn(page, "75");
  const answered = page.waitForResponse((reply) => reply.request().method() === "POST");
  await page.locator("button[value=look]").click();
  assert.equal((await answered).status(), 401);
  await context.close();
});
