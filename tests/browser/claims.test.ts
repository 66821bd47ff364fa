// The notebook of reported claims, used as a reviewer uses it.
import { afterAll, beforeAll, expect, it } from "vitest";
import { testSite, type TestSite } from "./page.js";

let site: TestSite;
beforeAll(async () => {
  site = await testSite();
}, 120_000);
afterAll(() => site.close());

it("marks the pasted text, opens the sum of a claim and keeps pasted markup as text", async () => {
  const { page, trouble } = await site.open("claims/");
  await page.waitForSelector("button.claim");
  await page.fill(
    "#pasted",
    "<b onclick=alert(1)>Union</b> was obtained in 31 of 37 fractures (86%) and 28 of 30 (93%).",
  );
  await page.waitForFunction(() => document.querySelectorAll("button.claim").length === 2);
  await expect.poll(() => page.locator(".marked").innerText()).toContain("<b onclick=alert(1)>Union</b>");
  expect(await page.locator(".marked b").count()).toBe(0);
  await expect.poll(() => page.locator("button.claim.fails").innerText()).toBe("✗31 of 37 fractures (86%)");
  await expect.poll(() => page.locator(".sum").innerText()).toContain("31 of 37 is 84%, not 86%");
  await page.locator("button.claim.holds").click();
  await expect.poll(() => page.locator(".sum").innerText()).toContain("arithmetic: holds");
  await expect.poll(() => page.locator("textarea[id^=comment]").inputValue()).toContain("Which number is right?");
  expect(trouble).toEqual([]);
  await page.context().close();
});

it("remarks on wording when the box is ticked, touches no verdict, and takes the remarks back", async () => {
  const { page, trouble } = await site.open("claims/");
  await page.waitForSelector("button.claim");
  await page.fill("#pasted", "Wiring prevented loss of position. Union was obtained in 31 of 37 fractures (84%).");
  await expect.poll(() => page.locator("button.claim").allInnerTexts()).toEqual(["✓31 of 37 fractures (84%)"]);
  const remarks = page.getByRole("list", { name: "Remarks on wording" }).locator("li");
  await expect.poll(() => remarks.allInnerTexts()).toEqual([]);
  await page.getByLabel("Also remark on wording (no verdict)").check();
  await expect
    .poll(() => remarks.allInnerTexts())
    .toEqual([
      '"prevented": a causal verb: would the design carry it, or would "was associated with" say what was seen?',
    ]);
  await expect.poll(() => page.locator("button.claim").allInnerTexts()).toEqual(["✓31 of 37 fractures (84%)"]);
  await page.getByLabel("Also remark on wording (no verdict)").uncheck();
  await expect.poll(() => remarks.allInnerTexts()).toEqual([]);
  expect(trouble).toEqual([]);
  await page.context().close();
});
