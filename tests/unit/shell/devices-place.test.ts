/** Whoever is sent to the cue devices reads one name, in the menu, on the pairing page, in errors and in the README. */
import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { expect, test } from "vitest";
import { GET as cards } from "#app/api/devices/cards/route.ts";
import { menuPlaces } from "#lib/find/program-pages.ts";
import { DEVICES_PLACE, DEVICES_WORDS } from "#lib/protocol/places.ts";
import { request, startHarness } from "../auth-harness.ts";

const ROOT = join(import.meta.dirname, "../../..");

test("the menu's word is the one that sentences begin with", () => {
  const manager = { kind: "person", id: "p", roles: ["manager"] } as const;
  const entry = menuPlaces(manager).find(({ href }) => DEVICES_PLACE.href.startsWith(`${href}#`));
  expect(entry?.name).toBe(DEVICES_PLACE.under);
});

test("a device that is not paired any more is sent to that name; so is a reader of the README", async () => {
  const h = startHarness();
  const answer = await (await cards(request("/api/devices/cards"))).json();
  h.stop();
  expect(answer.error.message).toContain(DEVICES_WORDS);
  expect(readFileSync(join(ROOT, "README.md"), "utf8")).toContain(`_${DEVICES_WORDS}_`);
});

test("no page, error or greeting writes the name or the address of its own", () => {
  const sources = ["app", "server", "lib"].flatMap((top) =>
    readdirSync(join(ROOT, top), { recursive: true, encoding: "utf8" })
      .filter((name) => /\.tsx?$/.test(name))
      .map((name) => join(top, name)),
  );
  const strays = sources.filter(
    (name) =>
      name !== join("lib", "protocol", "places.ts") &&
      /studio#devices|Studio, Cue|[>"`]Cue devices/.test(readFileSync(join(ROOT, name), "utf8")),
  );
  expect(strays).toEqual([]);
});
