/**
 * The whole job: a trainee hands in, a lead comments on the words and hands back, the trainee fixes it, the lead signs
 * off, a device is paired, the server stops, and the class runs through with the right calls at the right seconds.
 */
import type { Page } from "@playwright/test";
import { expect, expectSaved, onRail, openPlan, script, test } from "./kit.ts";
import { SHORT_CLASS } from "./short-class.ts";

test.describe.configure({ mode: "serial" });

async function importPlan(page: Page, plan: unknown): Promise<void> {
  await page.goto("/desk");
  await page.getByLabel("Open a plan file").setInputFiles({
    name: "five-quiet-minutes.json",
    mimeType: "application/json",
    buffer: Buffer.from(JSON.stringify(plan)),
  });
}

test("[INV-16] a bad plan file is refused with a sentence that names the place", async ({ as }) => {
  const jonas = await as("jonas");
  const [first, ...rest] = SHORT_CLASS.items;
  await importPlan(jonas, { ...SHORT_CLASS, items: [first, { ...rest[0], seconds: "sixty" }] });
  await expect(jonas.getByText(/\/items\/1\/seconds/)).toBeVisible();
});

test("offered for reading, commented, returned with notes, fixed, signed", async ({ as }) => {
  const jonas = await as("jonas");
  const ines = await as("ines");
  await importPlan(jonas, SHORT_CLASS);
  await jonas.waitForURL(/\/plans\//);
  await expect(jonas.getByRole("button", { name: /\d+ must fix/ })).toBeVisible();
  await jonas.getByRole("button", { name: "Offer for reading" }).click();
  const handIn = jonas.getByRole("dialog", { name: "Offer for reading" });
  await handIn.getByLabel(/A note to the lead/).fill("My first five minutes.");
  await handIn.getByRole("button", { name: "Offer for reading" }).click();
  await expect(jonas.getByText(/offered for reading ·/)).toBeVisible();

  await openPlan(ines, SHORT_CLASS.title);
  await onRail(ines, /Seated row, left/).click();
  await script(ines)
    .getByText("And begin.")
    .dblclick({ position: { x: 12, y: 10 } });
  await ines.getByRole("button", { name: "Comment on these words" }).click();
  await ines.getByLabel("Comment on these words").last().fill("Count them in.");
  await ines.getByRole("button", { name: "Comment", exact: true }).click();
  await expect(ines.getByRole("article", { name: "Thread by Ines Duarte" })).toContainText("And");

  await ines.getByRole("button", { name: "Review and sign" }).click();
  const review = ines.getByRole("dialog", { name: "Review and sign" });
  await expect(review.getByRole("button", { name: /Sign off edition 1/ })).toHaveAttribute("aria-disabled", "true");
  await review.getByRole("button", { name: "Not now" }).click();
  await ines.getByRole("button", { name: "Return with notes" }).click();
  const back = ines.getByRole("dialog", { name: "Return with notes" });
  await back.getByLabel("What should be changed").fill("Give the left side its whole minute, and count them in.");
  await back.getByRole("button", { name: "Return with notes" }).click();
  await expect(jonas.getByText(/returned with notes ·/)).toBeVisible();

  await onRail(jonas, /Seated row, left/).click();
  await jonas.getByLabel("Seconds", { exact: true }).fill("60");
  await jonas.getByLabel("Seconds", { exact: true }).press("Enter");
  await expect(jonas.getByRole("button", { name: /\d+ must fix/ })).toHaveCount(0);
  await script(jonas).getByText("And begin.").click();
  await jonas.keyboard.press("End");
  await jonas.keyboard.type(" Three, two, one.");
  await expectSaved(jonas);
  const thread = jonas.getByRole("article", { name: "Thread by Ines Duarte" });
  // Only a lead settles what a lead asked for: an author replies that it is fixed.
  await expect(thread.getByRole("button", { name: "settle" })).toHaveCount(0);
  await thread.getByRole("button", { name: "Reply" }).click();
  await thread.getByLabel("Reply").fill("Fixed: they are counted in.");
  await thread.getByRole("button", { name: "Send the reply" }).click();
  await expect(thread.getByText("1 reply")).toBeVisible();
  await jonas.getByRole("button", { name: "Offer for reading" }).click();
  await jonas.getByRole("dialog").getByRole("button", { name: "Offer for reading" }).click();
  const settle = ines.getByRole("article", { name: "Thread by Ines Duarte" }).getByRole("button", { name: "settle" });
  await settle.click();
  // The plan to be signed is read as it is at that moment.
  await expect(settle).toHaveCount(0);

  await ines.getByRole("button", { name: "Review and sign" }).click();
  // What is left open is said and ticked: nothing is signed in silence.
  await expect(review.getByRole("button", { name: /Sign off edition 1/ })).toHaveAttribute("aria-disabled", "true");
  await review.getByRole("checkbox", { name: /left open$/ }).check();
  await expect(review.getByRole("button", { name: /Sign off edition 1/ })).toHaveAttribute("aria-disabled", "false");
  // Changed while she reads: what she signs must be what she read.
  await jonas.getByRole("button", { name: "5 seconds more" }).click();
  await expectSaved(jonas);
  await review.getByRole("button", { name: /Sign off edition 1/ }).click();
  await expect(review.getByRole("alert").filter({ hasText: "has changed since you read it" })).toBeVisible();
  await jonas.getByRole("button", { name: "Undo" }).click();
  await expectSaved(jonas);
  await review.getByRole("button", { name: "Read it again" }).click();
  await review.getByRole("checkbox", { name: /left open$/ }).check();
  await review.getByRole("button", { name: /Sign off edition 1/ }).click();
  await expect(ines.getByText(/signed off · edition 1/)).toBeVisible();
  await expect(jonas.getByText(/signed off · edition 1/)).toBeVisible();
});

test("the tracks and the print sheet of the edition", async ({ as }) => {
  const sam = await as("sam");
  await sam.goto("/desk");
  await sam.getByRole("link", { name: /print/i }).first().click();
  await expect(sam.getByText(/clinician/i).first()).toBeVisible();
});

test("[INV-14] paired, server gone, page reloaded: the class runs to its end, second by second", async ({
  as,
  app,
}) => {
  const petra = await as("petra");
  await petra.goto("/studio");
  await petra.getByLabel("Name of the device").fill("Tablet by the window");
  await petra.getByRole("button", { name: "Make a pairing code" }).click();
  const code = await petra.locator("#devices [role=status] p").last().textContent();

  const device = await as(null);
  await device.clock.install();
  await device.goto("/floor");
  await device.getByLabel("Pairing code").fill(code ?? "");
  await device.getByRole("button", { name: "Pair" }).click();
  const card = device.getByRole("button", { name: /Five quiet minutes/ });
  await expect(card).toContainText("signature verified");
  await expect(device.getByText(/opens with no network/).first()).toBeVisible();
  await app.stop("SIGKILL");
  await device.reload();
  await card.click();
  await device.clock.pauseAt(new Date(Date.now() + 60_000));
  await device.getByRole("button", { name: /^Start/ }).click();

  const floor = device.locator("[data-phase]");
  const timer = device.getByRole("timer");
  // Jumps, as a sleeping tab would, then lets the screen catch up: a clock that counted ticks would be wrong.
  const to = async (second: number, from: number) => {
    await device.clock.fastForward((second - from) * 1000 - 300);
    await device.clock.runFor(300);
  };
  await expect(floor).toHaveAttribute("data-phase", "opening");
  // 30 s opening, right row 30-90, change 90-100, left row 100-160, change 160-170, press 170-230, closing to 300.
  await to(40, 0);
  await expect(floor).toHaveAttribute("data-phase", "work");
  await expect(device.getByRole("region", { name: "Now" })).toContainText("Seated row");
  await expect(device.getByText("right side")).toBeVisible();
  await expect(timer).toContainText("50");
  await to(76, 40);
  await expect(device.getByText("coming up: say it now")).toBeVisible();
  await to(88, 76);
  await expect(timer).toContainText("count");
  await expect(timer).toContainText("2");
  await to(95, 88);
  await expect(floor).toHaveAttribute("data-phase", "change");
  await to(101, 95);
  await expect(device.getByText("left side")).toBeVisible();
  // Held for ten seconds, the class ends ten seconds later and says so.
  await device.keyboard.press("Space");
  await to(10, 0);
  await device.keyboard.press("Space");
  await expect(timer).toContainText("59");
  await expect(device.getByText("0:10 late")).toBeVisible();
  await to(171, 101);
  await expect(device.getByRole("region", { name: "Now" })).toContainText("Seated chest press");
  await to(240, 171);
  await expect(floor).toHaveAttribute("data-phase", "closing");
  await to(301, 240);
  await expect(device.getByText("The class is done")).toBeVisible();
  await app.start();
});
