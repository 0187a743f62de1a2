// Each page at each size of screen, with and without script: can it be read, reached and pressed by everybody?
import assert from "node:assert/strict";
import { after, before, test } from "node:test";
import { assertNone, barriers, cutOff, launch, sideways, sizes, smallTargets, stateOf, visitor } from "./station.mjs";

const ours = "/lot/A26329CLB03L";
const suppliers = "/lot/MB-5521";

// [what it is, the address, who looks, the status it answers with, what is pressed then]
const pages = [
  ["today", "/", null, 200],
  ["today on the wall", "/wall", null, 200],
  ["find", "/find", null, 200],
  ["find with results", "/find?q=butter", null, 200],
  ["find without a result", "/find?q=zebra", null, 200],
  ["who signs in", "/sign-in", null, 200],
  ["the PIN", "/sign-in?name=MK&back=%2F", null, 200],
  ["a PIN that is refused", "/sign-in?name=RT&back=%2F", null, 403, refusePin],
  ["make, signed out", "/make/chilli-lime-butter", null, 200],
  ["what can be made", "/make", "MK", 200],
  ["what can be made, narrowed", "/make?q=butter", "MK", 200],
  ["a batch to be made", "/make/chilli-lime-butter", "MK", 200],
  ["a batch looked at first", "/make/chilli-lime-butter", "MK", 200, lookFirst],
  ["a batch refused", "/make/chilli-lime-butter", "MK", 422, lookAtNonsense],
  ["a lot of ours, signed out", ours, null, 200],
  ["a lot of ours", ours, "MK", 200],
  ["a lot of ours, something happening", ours, "MK", 200, chooseDiscarded],
  ["a lot of ours, an event refused", ours, "MK", 422, discardWithoutReason],
  ["a lot of a supplier", suppliers, "MK", 200],
  ["what a recall reaches", "/recall/MB-5521?item=butter-unsalted", "MK", 200],
  ["a recall, signed out", "/recall/MB-5521?item=butter-unsalted", null, 401],
  ["a lot of a supplier, signed out", suppliers, null, 200],
  ["a cooling that is not shown", "/lot/A26329CTN081", "MK", 200],
  ["sheets, of the orders too", "/sheets", "MK", 200],
  ["scan, signed out", "/scan", null, 200],
  ["scan", "/scan", "MK", 200],
  ["a lot that is not there", "/lot/A26329CLB99Z", null, 404],
  ["a page that is not there", "/nowhere", null, 404],
  ["the languages", "/", null, 200, openLanguages],
];

async function refusePin(page) {
  // None: an empty name is nobody's, so that no person of the kitchen is locked out by these.
  await page.locator("form.pin input[name=name]").evaluate((field) => (field.value = ""));
  await page.locator("#pin").fill("000000");
  return pressed(page, "form.pin button");
}

async function lookFirst(page) {
  await page.locator("#quantity").fill("12 kg");
  await page.locator("#containers").fill("24 tub 500 g");
  const reply = await pressed(page, "button[value=look]");
  await page.locator("#foreseen").waitFor();
  return reply;
}

async function lookAtNonsense(page) {
  await page.locator("#quantity").fill("a lot");
  return pressed(page, "button[value=look]");
}

async function chooseDiscarded(page) {
  await page.locator("input[name=event][value=discarded]").check();
}

async function discardWithoutReason(page) {
  await chooseDiscarded(page);
  return pressed(page, "form.happened button");
}

async function openLanguages(page) {
  await page.locator(".languages summary").click();
}

// Presses a button that sends a form, and waits for the page that answers.
async function pressed(page, button) {
  const answered = page.waitForResponse((reply) => reply.request().method() === "POST");
  await page.locator(button).first().click();
  const reply = await answered;
  await page.waitForLoadState();
  return reply;
}

// axe-core is script itself: without script the same pages are looked at by everything else.
const limit = { timeout: 120_000 };

let browser;
const states = {};
before(async () => {
  browser = await launch();
  states.MK = await stateOf(browser, "MK");
});
after(() => browser?.close());

for (const [name, address, who, status, press] of pages) {
  for (const script of [true, false]) {
    test(`${name}${script ? "" : ", without script"}: nobody is shut out, at any size`, limit, async () => {
      for (const size of sizes) {
        const { context, page, faults } = await visitor(browser, { ...size, script, state: who && states[who] });
        const opened = await page.goto(address);
        const reply = (press && (await press(page))) || opened;
        assert.equal(reply.status(), status);
        if (script) assertNone(await barriers(page), `barriers on ${size.name}`);
        assert.equal(await sideways(page), 0, `scrolls sideways on ${size.name}`);
        assertNone(await smallTargets(page), `small targets on ${size.name}`);
        assertNone(await cutOff(page), `text cut off on ${size.name}`);
        assert.equal(await page.locator("h1").count(), 1);
        assertNone(faults, `on ${size.name}`);
        await context.close();
      }
    });
  }
}

test("a page that is too wide, too small to press, mute or asks elsewhere is found out", limit, async () => {
  const { context, page, faults } = await visitor(browser, sizes[0]);
  await page.goto("/");
  await page.evaluate(() => {
    document.querySelector("main").innerHTML =
      "<div>wide</div><a href='/'>x</a><div>cut off here</div><input>";
    const [wide, cut] = document.querySelectorAll("main div");
    wide.style.width = "50rem";
    Object.assign(cut.style, { width: "3rem", overflow: "hidden", whiteSpace: "nowrap" });
    const picture = new Image();
    picture.src = "http://elsewhere.invalid/picture.png";
    console.error("said aloud");
  });
  assert.ok((await barriers(page)).some((one) => one.startsWith("label:")));
  assert.ok((await sideways(page)) > 0);
  assert.equal((await smallTargets(page)).length, 1);
  assert.equal((await cutOff(page)).length, 1);
  await page.goto("http://elsewhere.invalid/").catch(() => {});
  assert.equal(faults.filter((one) => one === "console: said aloud").length, 1);
  assert.ok(faults.some((one) => /^console: .*Content Security Policy/.test(one)));
  assert.ok(faults.includes("asks another host: http://elsewhere.invalid/"));
  await context.close();
});

test("a phone's page is one column: no field or button stands beside another, but a search and its button", limit, async () => {
  for (const size of sizes.slice(0, 2))
    for (const address of [ours, "/make/chilli-lime-butter"]) {
      const { context, page } = await visitor(browser, { ...size, state: states.MK });
      await page.goto(address);
      const beside = await page.evaluate(() => {
        const boxes = [...document.querySelectorAll("main :is(input:not([type=hidden]), select, button)")]
          .map((one) => [one, one.getBoundingClientRect()])
          .filter(([one, box]) => box.height > 0 && !one.closest("details:not([open])"));
        return boxes.flatMap(([one, a]) =>
          boxes.filter(([, b]) => a !== b && a.top < b.bottom - 1 && b.top < a.bottom - 1).map(() => one.name || one.textContent),
        );
      });
      assertNone(beside, `${address} on ${size.name}`);
      await context.close();
    }
});

test("all that is due can be seen on the wall without scrolling", limit, async () => {
  const { context, page } = await visitor(browser, sizes[3]);
  await page.goto("/wall");
  const rows = page.locator("ul.due li");
  assert.ok((await rows.count()) > 10);
  for (const row of await rows.all()) {
    const box = await row.boundingBox();
    assert.ok(box.y + box.height <= 1080, await row.innerText());
  }
  await context.close();
});
