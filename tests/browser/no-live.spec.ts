/** Pages behind a plain HTTP proxy that passes no upgrades say so instead of loading for ever. */
import type { Page } from "@playwright/test";
import { plainProxy } from "../support/plain-proxy.ts";
import { expect, test } from "./kit.ts";

const WORDS = "This address does not carry live connections";
const told = (page: Page) => page.getByRole("alert").filter({ hasText: WORDS });

test("plan, month and floor say that the address allows no live connection; a plan opens once it does", async ({
  app,
  as,
}) => {
  const proxy = await plainProxy({ to: () => Number(new URL(app.url).port) });
  const through = { proxy: { server: proxy.url, bypass: "<-loopback>" } };
  const page = await as("marta", through);
  await page.goto("/programme");
  await expect(told(page)).toContainText("npm run -s doctor", { timeout: 30_000 });
  await expect(told(page)).toContainText("Behind a proxy");
  await expect(page.getByText("Opening the month")).toHaveCount(0);

  await page.goto("/desk");
  await page.getByRole("link", { name: "Upper body and trunk" }).first().click();
  await expect(told(page)).toBeVisible({ timeout: 30_000 });
  await expect(page.getByText("Opening the plan")).toHaveCount(0);

  const manager = await as("petra");
  const rooms = await (await manager.request.get("/api/rooms")).json();
  const data = { name: "Screen behind a proxy", roomId: rooms[0].id };
  const made = await manager.request.post("/api/devices", { data, headers: { origin: app.url } });
  const screen = await as(null, through);
  await screen.goto("/floor");
  await screen.getByLabel("Pairing code").fill((await made.json()).code);
  await screen.getByRole("button", { name: "Pair" }).click();
  await expect(screen.getByText(WORDS)).toBeVisible({ timeout: 30_000 });

  proxy.carry(true);
  await expect(page.getByRole("listbox", { name: "The class, item by item" })).toBeVisible({ timeout: 30_000 });
  await expect(told(page)).toHaveCount(0);
  await proxy.stop();
});
