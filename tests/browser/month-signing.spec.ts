/** A lead signs a month off in the page: a finding accepted, a change meanwhile told in words, the edition. */
import type { Page } from "@playwright/test";
import { expectNoBarrierLightOrDark } from "../support/barriers.ts";
import { expect, test } from "./kit.ts";

/** Five months back nothing stands in the programme of the invented studio; the two years ahead follow its pattern. */
const monthFrom = (months: number): string => {
  const now = new Date();
  return new Date(Date.UTC(now.getUTCFullYear(), now.getUTCMonth() + months, 1)).toISOString().slice(0, 7);
};
const MONTH = monthFrom(-5);

/** Adds a class as a spreadsheet would. */
async function addClass(page: Page, line: string): Promise<void> {
  const answer = await page.evaluate(
    async ([month, row]) => {
      const body = `date,start,minutes,room,coach\n${row}\n`;
      const { status } = await fetch(`/api/programme/${month}/csv`, {
        method: "POST",
        headers: { "content-type": "application/json" },
        body,
      });
      return status;
    },
    [MONTH, line] as const,
  );
  expect(answer).toBe(200);
}

test("reads, is told what changed meanwhile, reads again and signs; the rest of the studio may not", async ({ as }) => {
  const page = await as("ines");
  await page.goto(`/programme/${MONTH}`);
  await expect(page.getByRole("heading", { level: 1 })).toBeVisible();
  await addClass(page, `${MONTH}-10,18:00,45,Loft,`);
  await page.goto(`/programme/${MONTH}/sign`);
  await expect(page.getByRole("heading", { name: "1 class" })).toBeVisible();
  await expectNoBarrierLightOrDark(page);
  await addClass(page, `${MONTH}-11,19:00,45,Loft,`);
  await page.getByLabel("Note").fill("A quiet month.");
  await page.getByRole("button", { name: "Sign the month off" }).click();
  await expect(page.getByRole("alert").filter({ hasText: "changed since you read it" })).toContainText("New: ");
  await page.getByRole("button", { name: "Read it again" }).click();
  await expect(page.getByRole("heading", { name: "2 classes" })).toBeVisible();
  await expect(page.getByLabel("Note"), "what was typed stays").toHaveValue("A quiet month.");
  await page.getByRole("button", { name: "Sign the month off" }).click();
  await expect(page.getByText("The month is signed off as edition 1.")).toBeVisible();
  await page.reload();
  await expect(page.getByRole("heading", { name: "Changed since edition 1" })).toBeVisible();
  await expect(page.getByText("Nothing has changed since edition 1 was signed.")).toBeVisible();
  await expect(page.getByRole("button", { name: "Sign the month off" })).toBeDisabled();
  const marta = await as("marta");
  await marta.goto(`/programme/${MONTH}/sign`);
  await expect(marta.getByRole("button", { name: "Sign the month off" })).toHaveCount(0);
});

test("a signing is told to the managers, with the way to the month", async ({ as }) => {
  const petra = await as("petra");
  await petra.goto("/notices");
  const notice = petra.getByRole("link", { name: /^Ines .* signed off .* as edition 1\.$/ }).first();
  await expect(notice).toHaveAttribute("href", `/programme/${MONTH}`);
});

test("a finding to look at again is accepted with a reason, and ended", async ({ as }) => {
  const page = await as("ines");
  const month = monthFrom(1);
  await page.goto(`/programme/${month}/sign`);
  const accept = page.getByRole("button", { name: /^Accept: / });
  await expect(accept.first()).toBeVisible();
  const before = await accept.count();
  await accept.first().click();
  await page.getByLabel("Why it may stay as it is").fill("Fine");
  await page.getByRole("button", { name: "Accept", exact: true }).click();
  await expect(page.getByText("Say in at least three words why it may stay as it is.")).toBeVisible();
  await page.getByLabel("Why it may stay as it is").fill("The room fills by itself.");
  await page.getByRole("button", { name: "Accept", exact: true }).click();
  await expect(page.getByRole("heading", { name: "Accepted" })).toBeVisible();
  await expect(accept).toHaveCount(before - 1);
  await page.getByRole("button", { name: /^End: / }).click();
  await expect(accept).toHaveCount(before);
});

test("findings of one rule are accepted together, with one reason", async ({ as }) => {
  const page = await as("ines");
  await page.goto(`/programme/${monthFrom(9)}/sign`);
  const accept = page.getByRole("button", { name: /^Accept: / });
  await expect(accept.first()).toBeVisible();
  const before = await accept.count();
  const all = page.getByRole("button", { name: /^Accept all \d+ as they are$/ }).first();
  const several = Number(/\d+/.exec((await all.textContent()) ?? "")?.[0]);
  await all.click();
  await page.getByLabel("Why it may stay as it is").fill("Plans are written in the weeks before.");
  await page.getByRole("button", { name: "Accept", exact: true }).click();
  await expect(accept).toHaveCount(before - several);
  await expect(page.getByText("Plans are written in the weeks before.")).toHaveCount(several);
});
