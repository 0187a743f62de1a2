// The pages of a day's work: what leaves, the close of day, the day's record, sheets and lineage; nobody is shut out.
import assert from "node:assert/strict";
import { after, before, test } from "node:test";
import { assertNone, barriers, cutOff, launch, says, sideways, sizes, smallTargets, stateOf, visitor } from "./station.mjs";

const limit = { timeout: 120_000 };
const tinga = "A26329CTN081";

let browser;
const states = {};
before(async () => {
  browser = await launch();
  states.MK = await stateOf(browser, "MK");
  states.JO = await stateOf(browser, "JO");
});
after(() => browser?.close());

for (const script of [true, false]) {
  const how = script ? "" : ", without script";
  test(`bags that leave are on the note, and on their way${how}`, limit, async () => {
    const { context, page, faults } = await visitor(browser, { script, state: states.MK });
    await page.goto("/dispatch");
    await page.getByRole("radio", { name: "Foundry Offices" }).check();
    const note = await page.locator("#note").inputValue();
    await page.locator("#temperature").fill("38 °F");
    await page.locator(`[id^="go.${tinga}|chicken-tinga"]`).first().fill(script ? "10" : "11");
    await page.locator("form.goes button").click();
    await page.locator(".done").first().waitFor();
    assert.match(await says(page.locator("main")), new RegExp(`${note}.*Chicken tinga`));
    await page.goto(`/lot/${tinga}?item=chicken-tinga`);
    assert.match(await says(page.locator("ol.entries")), new RegExp(`dispatched, lot ${tinga}, container ${script ? 10 : 11}`));
    assertNone(faults);
    await context.close();
  });

  test(`what is too warm on the round is put on hold${how}`, limit, async () => {
    const { context, page, faults } = await visitor(browser, { script, state: states.MK });
    await page.goto("/rounds");
    await page.getByLabel("Temperature: van").fill("38 °F");
    await page.getByLabel("Temperature: walk-in 2").fill(script ? "46 °F" : "47 °F");
    await page.locator("button[value=temperatures]").click();
    await page.locator(".done").nth(1).waitFor();
    if (script) {
      assert.match(await says(page.locator(".group.stop")), /walk-in 2: 46 °F/);
      await page.locator("button[value=hold]").click();
      await page.locator(".done").first().waitFor();
      assert.match(await says(page.locator("main")), /Concerns:/);
    }
    assert.equal(await page.locator("button[value=hold]").count(), 0); // nothing in it is free any more
    assert.match(await says(page.locator("form.readings")), /OUT OF LIMIT/);
    assertNone(faults);
    await context.close();
  });

  test(`a package that came is received and here${how}`, limit, async () => {
    const { context, page, faults } = await visitor(browser, { script, state: states.MK });
    const lot = script ? "MB-7001" : "MB-7002";
    await page.goto("/open");
    await page.getByRole("link", { name: "Receive goods" }).click();
    await page.getByRole("link", { name: "Unsalted butter" }).click();
    await page.getByRole("radio", { name: /Larkfield Creamery CONTAINS milk/ }).check();
    await page.getByLabel("Lot on the package").fill(lot);
    await page.getByLabel("How much").fill("20 lb");
    await page.getByLabel("Temperature").fill("38 °F");
    await page.getByLabel("Place").fill("walk-in 1");
    await page.getByLabel("Date on it").fill("2027-01-20");
    await page.locator("form.receive button").click();
    await page.locator(".done").waitFor();
    await page.goto(`/lot/${lot}?item=butter-unsalted`);
    assert.match(await says(page.locator("main")), /GOOD.*walk-in 1/);
    assertNone(faults);
    await context.close();
  });

  test(`what was not seen at the close of day is asked about before it is missing${how}`, limit, async () => {
    const { context, page, faults } = await visitor(browser, { script, state: states.MK });
    await page.goto("/close");
    await page.getByRole("link", { name: "walk-in 1" }).click();
    await page.locator("form.counts").waitFor();
    const boxes = page.locator('form.counts input[name="all"]');
    const many = await boxes.count();
    assert.ok(many > 1, "nothing stands there");
    for (let i = 1; i < many; ++i) await boxes.nth(i).check();
    await page.locator("button[value=look]").click();
    await page.locator("#foreseen").waitFor();
    assert.equal(await page.locator("#foreseen li").count(), 1);
    await page.locator('form.counts input[name="all"]').nth(0).check();
    await page.locator("button[value=look]").click();
    await page.locator("#foreseen").waitFor();
    assert.match(await says(page.locator("#foreseen")), /Everything was seen/);
    await page.locator("button[value=record]").click();
    await page.locator(".done").first().waitFor();
    assertNone(faults);
    await context.close();
  });
}

const pages = [
  ["dispatch", "/dispatch"],
  ["the close of a place", "/close?place=walk-in%201"],
  ["the round with a thermometer", "/rounds"],
  ["receiving", "/receive"],
  ["a package that came", "/receive/butter-unsalted"],
  ["the record of a day", "/day/2026-11-25"],
  ["a prep sheet", "/sheets?product=chilli-lime-butter&amount=4%20kg&number=7&kind=prep"],
  ["a lineage", "/lineage/A26329CLB03L?item=chilli-lime-butter"],
];
for (const [name, address] of pages)
  for (const size of sizes)
    test(`${name} shuts nobody out on ${size.name}`, limit, async () => {
      const { context, page, faults } = await visitor(browser, { ...size, state: states.JO });
      await page.goto(address);
      assertNone(await barriers(page));
      assertNone(await smallTargets(page));
      assertNone(await cutOff(page));
      assert.equal(await sideways(page), 0);
      assertNone(faults);
      await context.close();
    });
