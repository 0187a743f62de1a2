// A lot on its page: reached by its label's code, who may read what, what happens to it, and its labels.
import assert from "node:assert/strict";
import { join } from "node:path";
import { after, before, test } from "node:test";
import { assertNone, barriers, codesOf, kitchen, lardiner, launch, pins, says, sideways, smallTargets, stateOf, visitor } from "./station.mjs";

const limit = { timeout: 120_000 };
const butter = "A26329CLB03L";

let browser;
const states = {};
before(async () => {
  browser = await launch();
  states.MK = await stateOf(browser, "MK");
});
after(() => browser?.close());

// The address in a code, on the station instead of on the kitchen's own name.
const onStation = (code) => code.replace("https://quarrylane.example", "");

test("the address in a label's code lands on the lot and its container", limit, async () => {
  const pdf = join(kitchen, "one.pdf");
  lardiner("labels", "--lot", "A26329TMS04I", "--containers", "2", "--by", "RT", "--out", pdf);
  const [code, ...more] = codesOf(pdf);
  assertNone(more);
  assert.match(code, /^https:\/\/quarrylane\.example\/01\/\d{14}\/10\/A26329TMS04I\/21\/[^?]+\?/);
  const { context, page, faults } = await visitor(browser);
  const reply = await page.goto(onStation(code));
  assert.equal(reply.status(), 200);
  assert.match(await says(page.locator("h1")), /^Tomatillo salsa\s+A26329TMS04I 2$/);
  assert.match(await says(page.locator(".group")), /^GOOD\s+USE BY TUE 01 DEC 2026\s+1 tub \(2\)$/);
  assert.equal(await page.locator(".verdict.stop").count(), 0);
  const altered = await page.goto(onStation(code).replace("A26329TMS04I", "A26329TMS04K"));
  assert.equal(altered.status(), 404);
  assertNone(faults);
  await context.close();
});

test("signed out, a lot's page names no staff, no place and no supplier", limit, async () => {
  const secrets = [...Object.keys(pins).map((who) => new RegExp(`\\b${who}\\b`)), /Kerrow|Oakhanger|Valdivar|Tamblyn|Benavente/];
  secrets.push(/Meadowfold|meadowfold|MF-20881/, /walk-in|freezer 1/);
  for (const lot of [butter, "MB-5521"]) {
    const out = await visitor(browser);
    await out.page.goto(`/lot/${lot}`);
    const html = await out.page.content();
    for (const secret of secrets) assert.doesNotMatch(html, secret);
    assert.match(html, /GOOD/);
    assert.equal(await out.page.locator("main form").count(), 0);
    await out.context.close();
  }
  const signed = await visitor(browser, { state: states.MK });
  await signed.page.goto(`/lot/${butter}`);
  assert.match(await says(signed.page.locator("ol.entries")), /\bMK\b/);
  assert.match(await says(signed.page.locator("main")), /walk-in 1/);
  await signed.context.close();
});

for (const [script, tub] of [[true, 4], [false, 5]]) {
  test(`a tub that is frozen asks for a new label, and what is printed bears the lot's code${script ? "" : ", without script"}`, limit, async () => {
    const { context, page, faults } = await visitor(browser, { script, state: states.MK });
    const before = join(kitchen, `before-${tub}.pdf`);
    lardiner("labels", "--lot", butter, "--containers", String(tub), "--by", "MK", "--out", before);
    const [old] = codesOf(before);
    await page.goto(`/lot/${butter}`);
    await page.locator("input[name=event][value=frozen]").check();
    await page.locator("#containers").fill(String(tub));
    await page.locator("#place").fill("freezer 1");
    await page.locator("form.happened button").click();
    await page.locator(".done").waitFor();
    assert.match(await says(page.locator(".done")), /^Recorded: A-\d+$/);
    const frozen = page.locator(".group", { hasText: /Needs a new label/ });
    assert.match(await says(frozen.first()), /FROZEN Wed 25 Nov 2026/);

    const told = await page.goto(onStation(old));
    assert.equal(told.status(), 200);
    assert.match(await says(page.locator("p.verdict.stop")), /^THIS LABEL HAS BECOME UNTRUE/);

    await page.goto(`/lot/${butter}`);
    await page.locator("#print_containers").fill(String(tub));
    // What a frozen label has to say is too much for the lid.
    await page.locator("#medium").selectOption("side");
    const printing = Promise.race([page.waitForEvent("download"), page.locator("main .problem").waitFor()]);
    await page.locator("form.print button[value=pdf]").click();
    const download = await printing;
    assert.ok(download, (await page.locator("main .problem").allInnerTexts()).join());
    assert.match(download.suggestedFilename(), /^A26329CLB03L-.+\.pdf$/);
    const pdf = join(kitchen, `after-${tub}.pdf`);
    await download.saveAs(pdf);
    const [code, ...more] = codesOf(pdf);
    assertNone(more);
    assert.match(code, /\/10\/A26329CLB03L\/21\//);
    assert.notEqual(code, old);
    await page.goto(onStation(code));
    assert.equal(await page.locator("p.verdict.stop").count(), 0);
    assert.match(await says(page.locator(".group")), /^GOOD\s+FROZEN/);
    assertNone(faults);
    await context.close();
  });
}

test("only what belongs to what happened is asked; what is filled in stays in sight", limit, async () => {
  const { context, page } = await visitor(browser, { state: states.MK, script: false });
  await page.goto(`/lot/${butter}`);
  const asked = () =>
    page.locator(".happened .fields p").evaluateAll((all) =>
      all.filter((one) => one.offsetParent).map((one) => one.querySelector("input, select").name),
    );
  const choose = (event) => page.locator(`input[name=event][value=${event}]`).check();
  assert.deepEqual(await asked(), ["at"]);
  await choose("cooled");
  assert.deepEqual(await asked(), ["at", "temperature"]);
  await page.locator("#temperature").fill("70 °F");
  await choose("discarded");
  assert.deepEqual(await asked(), ["at", "containers", "temperature", "reason"]);
  await page.locator("#temperature").fill("");
  await choose("reheated");
  assert.deepEqual(await asked(), ["at", "containers", "temperature", "held", "place"]);
  await choose("counted");
  assert.deepEqual(await asked(), ["at", "containers", "left", "place"]);
  await choose("hold");
  assert.deepEqual(await asked(), ["at", "reason"]);
  await choose("frozen");
  assert.deepEqual(await asked(), ["at", "containers", "place"]);
  await context.close();
});

test("a lot on hold says why, and its release asks for the strong word; neither shuts anybody out", limit, async () => {
  const dough = "A26329EMD06M";
  const { context, page } = await visitor(browser, { width: 320, height: 640, state: states.MK });
  await page.goto(`/lot/${dough}`);
  assert.equal(await page.locator("form.release").count(), 0);
  await page.locator("input[name=event][value=hold]").check();
  await page.locator("form.happened #reason").fill("a lid was off");
  await page.locator("form.happened button").click();
  await page.locator(".done").waitFor();
  assert.match(await says(page.locator(".group").first()), /^ON HOLD: DO NOT USE/);
  assert.match(await says(page.locator("form.release h2")), /^On hold: a lid was off$/);
  assertNone(await barriers(page));
  assertNone(await smallTargets(page));
  assert.equal(await sideways(page), 0);
  await page.locator("form.release input[name=reason]").fill("it was the next tub");
  await page.locator("form.release button").click();
  await page.getByRole("link", { name: "Sign in" }).click();
  await page.locator("ul.people").waitFor();
  await page.goto(`/lot/${dough}`);
  assert.equal(await page.locator("form.release").count(), 1);
  await context.close();
});

test("what a supplier's lot and a product are called is what is found", limit, async () => {
  const { context, page } = await visitor(browser);
  await page.goto("/find?q=butter");
  const found = await says(page.locator("ul.lots"));
  assert.match(found, /Chilli-lime butter\s+A26329CLB03L/);
  assert.match(found, /Unsalted butter\s+MB-5521/);
  await page.locator("ul.lots a", { hasText: "MB-5521" }).click();
  assert.match(await page.title(), /^Unsalted butter MB-5521 · Quarry Lane Commissary$/);
  await context.close();
});

test("a picture of a label, sent in, leads to its lot; one without a code says so", limit, async () => {
  const { context, page, faults } = await visitor(browser, { state: states.MK });
  const pdf = join(kitchen, "sent.pdf");
  lardiner("labels", "--lot", "A26329TMS04I", "--containers", "3", "--by", "RT", "--out", pdf);
  await page.goto("/scan");
  await page.locator("#picture").setInputFiles(pdf);
  await page.locator("form[enctype] button").click();
  await page.locator("ul.lots a").click();
  assert.match(await says(page.locator("h1")), /A26329TMS04I/);
  await page.goto("/scan");
  const empty = await page.screenshot();
  await page.locator("#picture").setInputFiles({ name: "page.png", mimeType: "image/png", buffer: empty });
  await page.locator("form[enctype] button").click();
  await page.locator("[role=status]").waitFor();
  assert.match(await says(page.locator("[role=status]")), /^A code was not found in it/);
  assertNone(faults);
  await context.close();
});
