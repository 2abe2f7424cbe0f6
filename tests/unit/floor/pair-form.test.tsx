/** Whoever pairs a device is sent to where its code really is: the words of the menu, of the page, and its address. */
import { readFileSync } from "node:fs";
import { renderToStaticMarkup } from "react-dom/server";
import { expect, test } from "vitest";
import { PairForm } from "#app/floor/_parts/pair-form.tsx";

test("the pairing page names the menu's own place and links to it", () => {
  const page = renderToStaticMarkup(<PairForm notices={[]} onPaired={async () => undefined} />);
  const [, href, words] = page.match(/<a href="([^"]+)">([^<]+)<\/a>/) ?? [];
  const [path = "", part = ""] = (href ?? "").split("#");
  const [menu = "", heading = ""] = (words ?? "").split(", ");
  expect(readFileSync("app/_shell/shell.tsx", "utf8")).toContain(`href: "${path}", name: "${menu}"`);
  expect(readFileSync("app/studio/page.tsx", "utf8")).toContain(`id="${part}"`);
  expect(readFileSync("app/studio/devices.tsx", "utf8")).toContain(`<h2>${heading}</h2>`);
});
