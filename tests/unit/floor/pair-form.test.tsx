/** Whoever pairs a device is sent to where the code really is: same words as menu and page, and the right address. */
import { readFileSync } from "node:fs";
import { renderToStaticMarkup } from "react-dom/server";
import { expect, test } from "vitest";
import { PairForm } from "#app/floor/_page/pair-form.tsx";
import { DEVICES_PLACE, DEVICES_WORDS } from "#lib/protocol/places.ts";

test("the pairing page names the place in the menu and links to it", () => {
  const page = renderToStaticMarkup(<PairForm notices={[]} onPaired={async () => undefined} />);
  const [, href, words] = page.match(/<a href="([^"]+)">([^<]+)<\/a>/) ?? [];
  expect(href).toBe(DEVICES_PLACE.href);
  expect(words).toBe(DEVICES_WORDS);
  const part = DEVICES_PLACE.href.split("#")[1];
  expect(readFileSync("app/studio/page.tsx", "utf8")).toContain(`id="${part}"`);
});
