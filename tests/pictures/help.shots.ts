/**
 * The pictures that help shows, of the invented studio: one part of a screen each, as WebP under 60 kB. The browser itself
 * writes that format, so no other program is needed.
 */
import { mkdirSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import type { Locator, Page } from "@playwright/test";
import { PICTURES, type PictureName } from "#lib/help/how-tos/types.ts";
import { expect, onRail, openPlan, test, type Who } from "../browser/kit.ts";

const FOLDER = join(import.meta.dirname, "../../app/help/pictures");
const MOST_BYTES = 60_000;
const QUALITIES = [0.85, 0.7, 0.5, 0.35];

interface Shot {
  readonly who: Who;
  readonly size: { readonly width: number; readonly height: number };
  /** Opens it and gives the part that is shown; null: what the window shows. */
  readonly open: (page: Page) => Promise<Locator | null>;
}

const upper = "Upper body and trunk";
const SHOTS: Readonly<Record<PictureName, Shot>> = {
  rail: {
    who: "marta",
    size: { width: 960, height: 640 },
    open: async (page) => {
      await openPlan(page, upper);
      return null;
    },
  },
  fit: {
    who: "marta",
    size: { width: 1000, height: 760 },
    open: async (page) => {
      await openPlan(page, upper);
      await page.getByRole("button", { name: "Fit to length" }).click();
      const dialog = page.getByRole("dialog", { name: "Fit to length" });
      await expect(dialog).toContainText("Then");
      return dialog;
    },
  },
  change: {
    who: "marta",
    size: { width: 1100, height: 760 },
    open: async (page) => {
      await openPlan(page, upper);
      await onRail(page, /Kneeling lat pull-down/)
        .first()
        .click();
      await expect(page.getByRole("textbox", { name: /^Script of/ })).toBeVisible();
      await page
        .getByText(/steps of the change/)
        .first()
        .click();
      return null;
    },
  },
  balance: {
    who: "marta",
    size: { width: 900, height: 640 },
    open: async (page) => {
      await openPlan(page, upper);
      await page.getByRole("button", { name: "Whole class" }).click();
      const balance = page.getByRole("region", { name: "Balance" });
      await balance.evaluate((one) => one.scrollIntoView({ block: "start" }));
      return null;
    },
  },
  review: {
    who: "ines",
    size: { width: 1000, height: 760 },
    open: async (page) => {
      await openPlan(page, "Arms and chest, first try");
      await page.getByRole("button", { name: "Review and sign" }).click();
      const dialog = page.getByRole("dialog", { name: "Review and sign" });
      await expect(dialog).toContainText("cannot be signed off yet", { timeout: 30_000 });
      return dialog;
    },
  },
  month: {
    who: "ines",
    size: { width: 1200, height: 760 },
    open: async (page) => {
      await page.goto(`/programme/${new Date().toISOString().slice(0, 7)}`);
      await expect(page.locator("[data-save]")).toHaveAttribute("data-save", "saved");
      return null;
    },
  },
  floor: {
    who: "marta",
    size: { width: 1024, height: 640 },
    open: async (page) => {
      await openPlan(page, upper);
      await page.goto(`${new URL(page.url()).pathname}/rehearse`);
      const begin = page.getByRole("button", { name: /^(Start|Rehearse)/ }).first();
      // Opened again, it goes on where it was.
      const seconds = page.getByText(/\d+:\d\d left/).first();
      await expect(begin.or(seconds).first()).toBeVisible();
      if (await begin.isVisible()) await begin.click();
      await expect(seconds).toBeVisible();
      return null;
    },
  },
  readings: {
    who: "petra",
    size: { width: 1000, height: 760 },
    open: async (page) => {
      await page.goto("/studio");
      await page
        .getByRole("link", { name: /^Measure/ })
        .first()
        .click();
      await expect(page).toHaveURL(/\/springs\//);
      await expect(page.getByRole("table").first()).toBeVisible();
      return null;
    },
  },
};

for (const [name, { who, size, open }] of Object.entries(SHOTS))
  test(`${name}: ${PICTURES[name as PictureName]}`, async ({ as }) => {
    mkdirSync(FOLDER, { recursive: true });
    const page = await as(who, { viewport: size });
    for (const colorScheme of ["light", "dark"] as const) {
      await page.emulateMedia({ colorScheme, reducedMotion: "reduce" });
      const part = await open(page);
      const png = await (part ?? page).screenshot();
      const webp = await asWebp(page, png);
      expect(webp.byteLength).toBeLessThanOrEqual(MOST_BYTES);
      writeFileSync(join(FOLDER, `${name}-${colorScheme}.webp`), webp);
    }
  });

/** At the best quality that keeps it small. */
async function asWebp(page: Page, png: Buffer): Promise<Buffer> {
  const blank = await page.context().newPage();
  let webp = png;
  for (const quality of QUALITIES) {
    const url = await blank.evaluate(encoded, { png: png.toString("base64"), quality });
    webp = Buffer.from(url.slice(url.indexOf(",") + 1), "base64");
    if (webp.byteLength <= MOST_BYTES) break;
  }
  await blank.close();
  return webp;
}

async function encoded({ png, quality }: { png: string; quality: number }): Promise<string> {
  const image = new Image();
  image.src = `data:image/png;base64,${png}`;
  await image.decode();
  const canvas = document.createElement("canvas");
  [canvas.width, canvas.height] = [image.width, image.height];
  canvas.getContext("2d")?.drawImage(image, 0, 0);
  return canvas.toDataURL("image/webp", quality);
}
