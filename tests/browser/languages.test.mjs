// The kitchen's languages: each can be chosen on any page, stays chosen, and its letters are those of our faces.
import assert from "node:assert/strict";
import { after, before, test } from "node:test";
import { assertNone, barriers, launch, says, sideways, sizes, smallTargets, visitor } from "./station.mjs";

const limit = { timeout: 120_000 };
const languages = [
  { code: "es", tag: "es", today: "Hoy" },
  { code: "vi", tag: "vi", today: "Hôm nay" },
  { code: "zh", tag: "zh-Hans", today: "今天" },
  { code: "en", tag: "en", today: "Today" },
];

let browser;
before(async () => (browser = await launch()));
after(() => browser?.close());

for (const script of [true, false])
  test(`each language of the kitchen can be chosen, and stays${script ? "" : ", without script"}`, limit, async () => {
    const { context, page, faults } = await visitor(browser, { script });
    await page.goto("/find?q=butter");
    for (const { code, tag, today } of languages) {
      await page.locator(".languages summary").click();
      await page.locator(`.languages a[hreflang=${code}]`).click();
      await page.locator(`html[lang="${tag}"]`).waitFor();
      assert.equal(new URL(page.url()).pathname + new URL(page.url()).search, "/find?q=butter");
      await page.locator("nav a").first().click();
      assert.equal(await says(page.locator("h1")), today);
      await page.goto("/find?q=butter");
    }
    assertNone(faults);
    await context.close();
  });

for (const { code, tag } of languages)
  test(`in ${code} nobody is shut out of a page, at any size`, limit, async () => {
    for (const size of sizes) {
      const { context, page, faults } = await visitor(browser, size);
      for (const address of ["/", "/wall", "/find?q=butter", "/make/chilli-lime-butter", "/lot/A26329CLB03L", "/sign-in?name=MK"]) {
        await page.goto(`/language?language=${code}&back=${encodeURIComponent(address)}`);
        assert.equal(await page.locator("html").getAttribute("lang"), tag);
        assertNone(await barriers(page), `barriers of ${address} on ${size.name}`);
        assert.equal(await sideways(page), 0, `${address} scrolls sideways on ${size.name}`);
        assertNone(await smallTargets(page), `small targets of ${address} on ${size.name}`);
      }
      assertNone(faults);
      await context.close();
    }
  });

test("Chinese is set in the faces that the station brings along", limit, async () => {
  const { context, page } = await visitor(browser);
  await page.goto("/language?language=zh&back=%2F");
  const session = await context.newCDPSession(page);
  await session.send("DOM.enable");
  await session.send("CSS.enable");
  const { root } = await session.send("DOM.getDocument");
  const { nodeId } = await session.send("DOM.querySelector", { nodeId: root.nodeId, selector: "h1" });
  await page.evaluate(() => document.fonts.ready);
  const { fonts } = await session.send("CSS.getPlatformFontsForNode", { nodeId });
  assert.ok(fonts.length > 0);
  assertNone(fonts.filter((font) => !font.isCustomFont));
  await context.close();
});
