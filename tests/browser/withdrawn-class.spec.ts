/** An edition that is withdrawn while a class of it runs: the coach is asked, nothing stops by itself, it starts no more. */
import type { Page } from "@playwright/test";
import { expect, test } from "./kit.ts";

const REASON = "The firm spring of the third machine is worn.";

test("the coach goes on to the end, or ends it; afterwards it cannot be started", async ({ as, app }) => {
  const [petra, ines] = [await as("petra"), await as("ines")];
  const headers = { origin: app.url };
  const rooms: { id: string; name: string }[] = await (await petra.request.get("/api/rooms")).json();
  const roomId = rooms.find(({ name }) => name === "Loft")?.id;
  const codeFor = async (name: string) =>
    (await (await petra.request.post("/api/devices", { data: { name, roomId }, headers })).json()).code as string;
  const [one, other] = [await as(null), await as(null)];
  await start(one, await codeFor("Left"));
  await start(other, await codeFor("Right"));

  const { editions } = await (await ines.request.get("/api/editions"))
    .json()
    .then(({ plans }) => ({ editions: plans }));
  const { planId, number } = editions.find((edition: { title: string }) => edition.title.startsWith("Whole body"));
  const withdrawn = await ines.request.post(`/api/editions/${planId}/${number}/withdraw`, {
    data: { reason: REASON },
    headers,
  });
  expect(withdrawn.ok()).toBe(true);

  for (const page of [one, other]) {
    const question = page.getByRole("alertdialog", { name: "This edition was withdrawn" });
    await expect(question).toContainText(`Withdrawn by Ines Duarte`, { timeout: 30_000 });
    await expect(question).toContainText(REASON);
    await expect(page.getByRole("timer")).toBeVisible();
  }
  await one.getByRole("button", { name: "go on to the end" }).click();
  await expect(one.getByRole("alertdialog")).toHaveCount(0);
  await expect(one.getByRole("timer")).toBeVisible();
  await other.getByRole("button", { name: "end now" }).press("Enter");
  await expect(other.getByText("The class was ended early")).toBeVisible();
  await other.getByRole("button", { name: "Back to the editions" }).click();
  const card = other.getByRole("button", { name: /Whole body, steady/ });
  await expect(card).toBeDisabled();
  await expect(card).toContainText(REASON);
});

async function start(page: Page, code: string): Promise<void> {
  await page.goto("/floor");
  await page.getByLabel("Pairing code").fill(code);
  await page.getByRole("button", { name: "Pair" }).click();
  await page.getByRole("button", { name: /Whole body, steady/ }).click();
  await page.getByRole("button", { name: /^Start/ }).click();
  await expect(page.getByRole("timer")).toBeVisible();
}
