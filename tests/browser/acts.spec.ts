/**
 * A change beside its set-up lines, step by step: what is missing, one press that writes it, what contradicts the plan.
 * And the moment at which a line begins, set by finger on a phone and taken back.
 */
import type { Page } from "@playwright/test";
import type { Plan } from "#lib/plan/schema.ts";
import { exampleMove, examplePlan } from "#lib/rules/define/example-plan.ts";
import { expectNoBarrier } from "../support/barriers.ts";
import { expect, expectSaved, importPlan, onRail, script, test, toEndOfScript } from "./kit.ts";

const PHONE = { viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true } as const;
const steps = (page: Page) => page.getByRole("region", { name: "Steps of the change" });
const lines = (page: Page) => script(page).locator(".script-line");

/** From a squat facing the front on one heavy to a press facing the back with two light. */
const plan = (title: string): Plan =>
  examplePlan(
    [
      exampleMove("a", { springs: { heavy: 1 } }),
      exampleMove("b", {
        move: "press",
        facing: "back",
        springs: { light: 2 },
        script: [
          { kind: "form", text: "Long neck." },
          { kind: "focus", text: "Feel the chest work." },
        ],
      }),
    ],
    { title },
  );

async function openPress(page: Page, data: Plan): Promise<void> {
  await page.goto(`/plans/${await importPlan(page, data)}`);
  await onRail(page, /Chest press/).click();
  await expect(lines(page).first()).toBeVisible();
}

test("a step that is not said, one press that writes the line, and one undo", async ({ as }) => {
  const page = await as("ines");
  await openPress(page, plan("Steps to write"));
  await expect(steps(page).getByRole("listitem").filter({ hasText: "Face the back: not said" })).toHaveCount(1);
  await expect(steps(page).getByRole("listitem").first()).toContainText("Carriage home: not said");
  await expectNoBarrier(page, { all: true, within: "aside" });

  await steps(page).getByRole("button", { name: "Write the set-up line" }).click();
  await expect(steps(page)).toContainText(/All \d steps of the change said/);
  await expect(lines(page)).toHaveCount(3);
  await expect(lines(page).first()).toContainText(/Carriage home, .*face the back/);
  await expect(steps(page).getByRole("button", { name: /set-up/ })).toHaveCount(0);

  await page.getByRole("button", { name: "Undo" }).first().click();
  await expect(lines(page)).toHaveCount(2);
  await expect(steps(page)).toContainText("Face the back: not said");
});

test("by keyboard: the key on the rail writes it, and a step shows its words in the line", async ({ as }) => {
  const page = await as("ines");
  await openPress(page, plan("Steps by key"));
  await onRail(page, /Chest press/).focus();
  await page.keyboard.press("s");
  const all = steps(page).getByText(/All \d steps/);
  await expect(all).toBeVisible();
  await all.click();
  await steps(page).getByRole("button", { name: "Face the back: said" }).focus();
  await page.keyboard.press("Enter");
  await expect(script(page)).toBeFocused();
  await expect.poll(() => page.evaluate(() => getSelection()?.toString())).toBe("face the back");
});

test("what the line says otherwise stands with its words, and is said as soon as the line is right", async ({ as }) => {
  const page = await as("ines");
  const wrong = plan("Steps said otherwise");
  const items = wrong.items.map((item) =>
    item.id === "b" ? { ...item, script: [{ kind: "setup" as const, text: "Carriage home, face the front" }] } : item,
  );
  await openPress(page, { ...wrong, items } as Plan);
  const turn = steps(page).getByRole("button", { name: /^Face the back/ });
  await expect(turn).toHaveAccessibleName("Face the back: said otherwise, “face the front”");
  await expect(steps(page).getByRole("button", { name: "Carriage home: said" })).toBeVisible();

  await toEndOfScript(page);
  for (const _ of "front") await page.keyboard.press("Backspace");
  await page.keyboard.type("back");
  await expect(turn).toHaveAccessibleName("Face the back: said");
});

test("on a phone, when a line begins is set by finger, and taken back by one undo", async ({ as }) => {
  const page = await as("ines", PHONE);
  await openPress(page, plan("Begins on a phone"));
  const moment = lines(page)
    .first()
    .getByRole("button", { name: /^Begins/ });
  await expect(moment).toHaveAccessibleName(/^Begins when it comes, at \d+:\d\d, \d s to say$/);
  const box = await moment.boundingBox();
  expect(Math.min(box?.width ?? 0, box?.height ?? 0)).toBeGreaterThanOrEqual(44);
  await moment.tap();
  const dialog = page.getByRole("dialog", { name: "When this line begins" });
  await dialog.getByText("after the work begins").tap();
  await dialog.getByRole("button", { name: "5 seconds more" }).tap();
  await dialog.getByRole("button", { name: "Set", exact: true }).tap();
  await expect(moment).toHaveAccessibleName(/^Begins after 20.s, at \d+:\d\d, \d s to say$/);
  await expect(lines(page).first()).toContainText(/after 20.s/);
  await expectSaved(page);

  await page.getByRole("button", { name: "Undo" }).first().tap();
  await expect(moment).toHaveAccessibleName(/^Begins when it comes/);
});
