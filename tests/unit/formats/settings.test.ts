/** A person's and the studio's formats over the API: per field, refused in a sentence, each by who may. Routes and database are the real ones. */
import { afterEach, beforeEach, describe, expect, test } from "vitest";
import * as firstRunRoute from "#app/api/first-run/route.ts";
import * as ownRoute from "#app/api/me/formats/route.ts";
import * as studioRoute from "#app/api/studio/formats/route.ts";
import * as monthRoute from "#app/api/studio/month/route.ts";
import * as nameRoute from "#app/api/studio/name/route.ts";
import { insertAccount } from "#db/repos/people-repo.ts";
import { listRecord } from "#db/repos/record-repo.ts";
import { readStudio } from "#db/repos/studio-repo.ts";
import { NOTHING_OWN } from "#lib/formats/formats.ts";
import type { Role } from "#lib/policy/can.ts";
import { personFormats, studioFormats } from "#server/formats/formats.ts";
import { changeOwnFormats } from "#server/formats/own-formats.ts";
import { readMonthSettings } from "#server/month-facts/month-settings.ts";
import { chooseNotices } from "#server/notices/notice-choices.ts";
import { changeStudioFormats } from "#server/studio/change-studio-formats.ts";
import { cookieOf, type Harness, PASSWORD, request, startHarness } from "../auth-harness.ts";

let h: Harness;
let ann = "";
let annId = "";
const person = (id: string, ...roles: Role[]) => ({ kind: "person", id, roles }) as const;
beforeEach(async () => {
  h = startHarness();
  const body = { studio: "Slipway Strength", name: "Ann", email: "ann@quay.example", password: PASSWORD };
  ann = cookieOf(await firstRunRoute.POST(request("/api/first-run", { method: "POST", body })));
  annId = listRecord(h.db, 0, 50).at(-1)?.actorId ?? "";
  insertAccount(h.db, {
    id: "bo",
    name: "Bo",
    email: "bo@quay.example",
    passwordHash: "x",
    roles: ["crew"],
    at: h.app.now(),
  });
});
afterEach(() => h.stop());

const put = (route: { PUT: typeof ownRoute.PUT }, path: string, body: unknown, cookie = ann) =>
  route.PUT(request(path, { method: "PUT", body, cookie }));
const own = (body: unknown) => put(ownRoute, "/api/me/formats", body);
const studio = (formats: object, seen: object) => put(studioRoute, "/api/studio/formats", { formats, seen });
const messageOf = async (answer: Response) => ((await answer.json()) as { error: { message: string } }).error.message;

describe("one's own", () => {
  test("change by field, follow the studio where nothing is chosen, and concern nobody else", async () => {
    expect((await own({ dates: "en-US", clock: "12" })).status).toBe(200);
    expect((await own({ force: "lbf" })).status).toBe(200);
    const answer = (await (await own({ clock: null })).json()) as { own: object };
    expect(answer.own).toEqual({ ...NOTHING_OWN, dates: "en-US", force: "lbf" });
    await studio({ length: "in", clock: "12" }, { length: "cm", clock: "24" });
    expect(personFormats(h.app, annId)).toMatchObject({ dates: "en-US", force: "lbf", length: "in", clock: "12" });
    expect(personFormats(h.app, "bo")).toMatchObject({ dates: "en-GB", force: "N", length: "in", clock: "12" });
  });

  test.each([
    [{ dates: "tlh" }, "Choose one of the list"],
    [{ clock: 12 }, "24 hours or 12"],
    [{ weekStart: 6 }, "on Monday or on Sunday"],
    [{ force: "stone" }, "newtons, kilograms or pounds"],
    [{ length: "ft" }, "centimetres or inches"],
  ])("%o is refused in a sentence, and nothing changes", async (body, says) => {
    const answer = await own(body);
    expect(answer.status).toBe(422);
    expect(await messageOf(answer)).toContain(says);
    expect(personFormats(h.app, annId)).toMatchObject({
      dates: "en-GB",
      clock: "24",
      weekStart: 1,
      force: "N",
      length: "cm",
    });
  });

  test("are anybody's who is signed in, and no device's", () => {
    for (const role of ["trainee", "coach", "lead", "manager", "crew"] as const)
      expect(changeOwnFormats(h.app, person("bo", role), { force: "kgf" }).ok).toBe(true);
    expect(changeOwnFormats(h.app, null, {})).toMatchObject({ ok: false, error: { status: 401 } });
    const device = { kind: "device", id: "d", roomId: "loft" } as const;
    expect(changeOwnFormats(h.app, device as never, {})).toMatchObject({ ok: false, error: { status: 403 } });
  });

  test("moments are told in the zone chosen under Notices, else in the studio's", async () => {
    await studio({ zone: "Europe/Lisbon" }, { zone: studioFormats(h.app).zone });
    expect(personFormats(h.app, annId).zone).toBe("Europe/Lisbon");
    chooseNotices(h.app, person(annId, "manager"), { digestAt: null, timeZone: "Asia/Tokyo", kinds: {} });
    expect(personFormats(h.app, annId).zone).toBe("Asia/Tokyo");
    expect(studioFormats(h.app).zone).toBe("Europe/Lisbon");
  });
});

describe("the studio's", () => {
  test("two managers in the same second: each keeps what they changed, and a clash is said", async () => {
    const seen = { zone: studioFormats(h.app).zone, weekStart: 1, clock: "24" };
    expect((await studio({ weekStart: 7 }, { weekStart: seen.weekStart })).status).toBe(200);
    // The other had the same page open, and changes another field.
    expect((await studio({ clock: "12" }, { clock: seen.clock })).status).toBe(200);
    expect(studioFormats(h.app)).toMatchObject({ weekStart: 7, clock: "12" });
    const clash = await studio({ weekStart: 1, force: "kgf" }, { weekStart: 1, force: "N" });
    expect(clash.status).toBe(200); // 1 to 1 is no change of theirs
    expect(studioFormats(h.app)).toMatchObject({ weekStart: 7, force: "kgf" });
    const refused = await studio({ force: "lbf", length: "in" }, { force: "N", length: "cm" });
    expect(refused.status).toBe(409);
    expect(await messageOf(refused)).toBe(
      "Somebody else has changed the unit of forces meanwhile. Nothing of yours was saved: reload the page and change it again.",
    );
    expect(studioFormats(h.app)).toMatchObject({ force: "kgf", length: "cm" });
  });

  test("share zone and week with the months' settings, whichever page changes them", async () => {
    const months = () => {
      const read = readMonthSettings(h.app, person(annId, "manager"));
      if (!read.ok) throw new Error("a manager reads them");
      return read.value;
    };
    const seen = months();
    await studio({ zone: "Europe/Lisbon", weekStart: 7 }, { zone: seen.zone, weekStart: 1 });
    expect(months()).toMatchObject({ zone: "Europe/Lisbon", weekStart: 7 });
    // A page that was open before changes the machines alone: the zone stays as it is now.
    const answer = await put(monthRoute, "/api/studio/month", { seen, settings: { ...seen, machines: { loft: 8 } } });
    expect(answer.status).toBe(200);
    expect(months()).toMatchObject({ zone: "Europe/Lisbon", weekStart: 7, machines: { loft: 8 } });
  });

  test("name and town likewise", async () => {
    const seen = { name: "Slipway Strength", town: "" };
    const name = (body: object) => put(nameRoute, "/api/studio/name", { ...seen, ...body, seen });
    expect((await name({ town: "Port Ellery" })).status).toBe(200);
    expect((await name({ name: "Slipway" })).status).toBe(200);
    expect(readStudio(h.db)).toMatchObject({ name: "Slipway", town: "Port Ellery" });
    const refused = await name({ name: "Slip" });
    expect([refused.status, await messageOf(refused)]).toEqual([409, expect.stringContaining("changed the name")]);
  });

  test("are a manager's alone, and stand in the record once", async () => {
    for (const role of ["trainee", "coach", "lead", "crew"] as const)
      expect(
        changeStudioFormats(h.app, person("bo", role), { formats: { clock: "12" }, seen: { clock: "24" } }),
      ).toMatchObject({
        error: { status: 403 },
      });
    await studio({ clock: "12" }, { clock: "24" });
    await studio({ clock: "12" }, { clock: "24" });
    const rows = listRecord(h.db, 0, 50).filter(({ kind }) => kind === "studio-formats");
    expect(rows.map(({ bodyJson }) => JSON.parse(bodyJson) as unknown)).toEqual([
      { formats: { clock: "12" }, before: { clock: "24" } },
    ]);
    const refused = await studio({ zone: "Atlantis/Centre" }, { zone: "UTC" });
    expect([refused.status, await messageOf(refused)]).toEqual([422, expect.stringContaining("Europe/Lisbon")]);
  });
});
