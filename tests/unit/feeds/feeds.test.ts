/** Calendar addresses: who makes and withdraws which, and what is read at one, over raw requests without a session. */

import { afterEach, beforeEach, describe, expect, test } from "vitest";
import * as calendarRoute from "#app/api/calendar/[file]/route.ts";
import { monthEditionTable } from "#db/month-schema.ts";
import { sha256Hex } from "#lib/canonical/canonical.ts";
import { createMonthDoc } from "#lib/programme/create.ts";
import { addSlot, changeSlot } from "#lib/programme/write.ts";
import { monthDoc } from "#server/context/live-documents.ts";
import { setSpringline } from "#server/context/springline.ts";
import { liveMonth } from "#server/feeds/live-month.ts";
import { listFeeds, makeFeed, renewFeed, withdrawFeed } from "#server/feeds/manage-feeds.ts";
import { FEED_PACE, NETWORK_PACE } from "#server/feeds/read-feed.ts";
import { changeRoles, removePerson } from "#server/people/manage-people.ts";
import { must, openStudio, type PlanStudio, type Who } from "#tests/support/plan-studio.ts";
import { readByIcalJs } from "#tests/support/read-feed.ts";

let s: PlanStudio;
// Monday, 2 November 2026.
beforeEach(async () => {
  s = openStudio();
  setSpringline(s.app);
  for (const month of ["2026-10", "2026-11", "2027-01", "2027-02"]) {
    s.app.documents.create(monthDoc(month), createMonthDoc(month), "marta");
  }
  await put("nov", "2026-11-20");
});
afterEach(async () => {
  setSpringline(undefined);
  await s.stop();
});

const put = (id: string, date: string, coach = "marta") =>
  s.write(monthDoc(date.slice(0, 7)), s.people.marta, (w) => {
    addSlot(w, { id, date, start: "07:00", minutes: 45, coach, room: "loft" }, s.app.now());
  });
type Kind = Parameters<typeof makeFeed>[2];
const STUDIO: Kind = { kind: "studio" };
const OWN: Kind = { kind: "coach" };
const LOFT: Kind = { kind: "room", subject: "loft" };
const make = (who: Who, kind: Kind) => makeFeed(s.app, s.people[who], kind);
const fileOf = (address: string) => address.split("/").at(-1) ?? "";
const ask = (address: string, headers: Record<string, string> = {}) =>
  calendarRoute.GET(new Request(address, { headers }), { params: Promise.resolve({ file: fileOf(address) }) });
const events = async (address: string) => readByIcalJs(await (await ask(address)).text()).events;
const codeOf = (result: { ok: boolean; error?: { code: string } }) => (result.ok ? "ok" : result.error?.code);

describe("who", () => {
  test("a coach and a lead make their own; a manager the studio's and the rooms'", () => {
    const said = (kind: Kind) =>
      (["ines", "marta", "jonas", "petra", "sam"] as const).map((who) => codeOf(make(who, kind)));
    expect(said(OWN)).toEqual(["ok", "ok", "no-right", "no-right", "no-right"]);
    expect(said(STUDIO)).toEqual(["no-right", "no-right", "no-right", "ok", "no-right"]);
    expect(said(LOFT)).toEqual(["no-right", "no-right", "no-right", "ok", "no-right"]);
    expect(codeOf(make("petra", { kind: "room", subject: "cellar" }))).toBe("no-room");
    expect(codeOf(make("marta", OWN))).toBe("calendar-stands");
  });

  test("a coach sees only their own, a manager all, and none of it is secret", () => {
    const { address } = must(make("marta", OWN));
    must(make("petra", STUDIO));
    const seen = (who: Who) => must(listFeeds(s.app, s.people[who]));
    expect(seen("marta").map(({ name, feed }) => [name, feed?.madeBy])).toEqual([["Marta", "Marta"]]);
    expect(seen("petra").map(({ name, mayMake, feed }) => [name, mayMake, feed !== null])).toEqual([
      ["Tholepin Strength", true, true],
      ["Harbour room", true, false],
      ["Loft", true, false],
      ["Marta", false, true],
    ]);
    expect(JSON.stringify(seen("petra"))).not.toContain(fileOf(address).slice(0, 10));
    expect(codeOf(listFeeds(s.app, s.people.jonas))).toBe("no-right");
  });

  test("a manager withdraws anybody's but renews only the studio's; a coach touches nobody else's", async () => {
    const marta = must(make("marta", OWN));
    const studio = must(make("petra", STUDIO));
    expect(codeOf(renewFeed(s.app, s.people.petra, marta.id))).toBe("no-right");
    expect(codeOf(renewFeed(s.app, s.people.ines, marta.id))).toBe("not-found");
    expect(codeOf(withdrawFeed(s.app, s.people.marta, studio.id))).toBe("not-found");
    expect(codeOf(withdrawFeed(s.app, s.people.petra, marta.id))).toBe("ok");
    expect(codeOf(withdrawFeed(s.app, s.people.petra, marta.id))).toBe("not-found");
    expect((await ask(marta.address)).status).toBe(404);
  });

  test("only a hash of the secret is kept, and it has 256 bits", () => {
    const { address } = must(make("marta", OWN));
    const secret = fileOf(address).replace(/\.ics$/, "");
    expect(Buffer.from(secret, "base64url")).toHaveLength(32);
    expect(JSON.stringify(s.db.raw.prepare("SELECT * FROM calendar_feed").all())).not.toContain(secret);
    expect(must(make("ines", OWN)).address).not.toBe(address);
  });
});

describe("reading", () => {
  test("needs the address alone, and gives a calendar that nothing else may take for something else", async () => {
    const { address } = must(make("marta", OWN));
    const answer = await ask(address);
    expect(answer.status).toBe(200);
    expect(Object.fromEntries(answer.headers)).toEqual({
      "cache-control": "private, no-cache",
      "content-type": "text/calendar; charset=utf-8",
      etag: expect.stringMatching(/^"[0-9a-f]{32}"$/),
      "x-content-type-options": "nosniff",
    });
    const read = readByIcalJs(await answer.text());
    expect(read.name).toBe("Tholepin Strength, Marta");
    expect(read.events.map(({ wall, summary, location }) => [wall, summary, location])).toEqual([
      ["2026-11-20T07:00", "Class", "Loft"],
    ]);
  });

  test("holds last month to two months ahead, and each its own classes", async () => {
    for (const date of ["2026-10-01", "2027-01-31", "2027-02-01"]) await put(`s${date}`, date);
    await put("jonas", "2026-11-21", "jonas");
    const marta = await events(must(make("marta", OWN)).address);
    expect(marta.map(({ wall }) => wall.slice(0, 10))).toEqual(["2026-10-01", "2026-11-20", "2027-01-31"]);
    for (const kind of [STUDIO, LOFT]) expect(await events(must(make("petra", kind)).address)).toHaveLength(4);
    expect(await events(must(make("petra", { kind: "room", subject: "harbour" })).address)).toHaveLength(0);
  });

  test("answers 304 to the tag that it gave until something changes", async () => {
    const { address } = must(make("marta", OWN));
    const tag = (await ask(address)).headers.get("etag") ?? "";
    for (const none of [tag, `W/${tag}`, `"other", ${tag}`, "*"]) {
      const again = await ask(address, { "if-none-match": none });
      expect([again.status, await again.text(), again.headers.get("etag")]).toEqual([304, "", tag]);
    }
    expect((await ask(address, { "if-none-match": '"other"' })).status).toBe(200);
    await s.write(monthDoc("2026-11"), s.people.marta, (w) => changeSlot(w, "nov", { minutes: 50 }));
    const changed = await ask(address, { "if-none-match": tag });
    expect([changed.status, changed.headers.get("etag") === tag]).toEqual([200, false]);
  });

  test("an unknown, a withdrawn, a renewed and a damaged address get the same answer", async () => {
    const first = must(make("marta", OWN));
    const second = must(renewFeed(s.app, s.people.marta, first.id));
    const third = must(renewFeed(s.app, s.people.marta, second.id));
    expect((await ask(third.address)).status).toBe(200);
    must(withdrawFeed(s.app, s.people.marta, third.id));
    const cut = third.address.replace(/\.ics$/, "");
    const wrong = [`${cut.slice(0, -1)}.ics`, cut, `${cut}x.ics`, `${cut.slice(0, cut.lastIndexOf("/"))}/.ics`];
    const answers = [first.address, second.address, third.address, ...wrong].map(async (address) => {
      const answer = await ask(address);
      return JSON.stringify([answer.status, [...answer.headers], await answer.json()]);
    });
    const said = new Set(await Promise.all(answers));
    expect(said.size).toBe(1);
    expect([...said][0]).toMatch(/^\[404,.*calendar-unknown/);
  });

  test.each([
    ["removed", () => removePerson(s.app, s.people.petra, "marta")],
    ["no coach any more", () => changeRoles(s.app, s.people.petra, "marta", ["crew"])],
  ])("stops at once when its coach is %s", async (_, act) => {
    const { address } = must(make("marta", OWN));
    expect((await ask(address)).status).toBe(200);
    expect(codeOf(act())).toBe("ok");
    expect((await ask(address)).status).toBe(404);
    expect(must(listFeeds(s.app, s.people.petra)).map(({ name }) => name)).not.toContain("Marta");
  });

  test("an address that a manager made, and so has seen, ends when they are none any more", async () => {
    s.db.raw.prepare("UPDATE member SET role = 'manager' WHERE user_id = 'noor'").run();
    const { address } = must(makeFeed(s.app, { kind: "person", id: "noor", roles: ["manager"] }, STUDIO));
    expect((await ask(address)).status).toBe(200);
    must(removePerson(s.app, s.people.petra, "noor"));
    expect((await ask(address)).status).toBe(404);
    expect(codeOf(make("petra", STUDIO))).toBe("ok");
  });

  test("notes when it was read last, about every ten minutes", async () => {
    const { address } = must(make("marta", OWN));
    const last = () => must(listFeeds(s.app, s.people.marta))[0]?.feed?.lastReadAt;
    expect(last()).toBeNull();
    const at = s.app.now();
    await ask(address);
    s.advance(60_000);
    await ask(address);
    expect(last()).toBe(at);
    s.advance(600_000);
    await ask(address);
    expect(last()).toBe(at + 660_000);
  });

  test("is limited by address and by network, and says how long to wait", async () => {
    const { address } = must(make("marta", OWN));
    for (let i = 0; i < FEED_PACE.burst; i++) expect((await ask(address)).status).toBe(200);
    const late = await ask(address);
    expect([late.status, late.headers.get("retry-after")]).toEqual([429, "10"]);
    s.advance(FEED_PACE.everyMs);
    expect((await ask(address)).status).toBe(200);
    const guess = (network: string) =>
      ask(`${address.slice(0, address.lastIndexOf("/"))}/guess.ics`, { "x-springline-network": network });
    for (let i = 0; i < NETWORK_PACE.burst; i++) expect((await guess("10.0.0.1")).status).toBe(404);
    expect((await guess("10.0.0.1")).status).toBe(429);
    expect((await guess("10.0.0.2")).status).toBe(404);
  });
});

describe("a month that was signed off", () => {
  const fileNow = () => JSON.stringify(must(liveMonth(s.app, s.people.marta, "2026-11")).file);
  const sign = (number: number, fileJson = fileNow()) =>
    s.db.orm
      .insert(monthEditionTable)
      .values({
        ...{ month: "2026-11", number, hash: sha256Hex(fileJson), fileJson },
        ...{ findingsJson: "[]", acceptedJson: "[]", signedBy: "ines", signedAt: s.app.now() },
      })
      .run();
  const move = (time: string) =>
    s.write(monthDoc("2026-11"), s.people.marta, (w) => changeSlot(w, "nov", { start: time }));
  const DAY = 86_400_000;

  test("is told as signed until a class is near, then as it stands; signed again it is told so at once", async () => {
    const { address } = must(make("marta", OWN));
    const told = async () => (await events(address)).map(({ wall }) => wall.slice(11));
    sign(1);
    await move("08:00");
    expect(await told()).toEqual(["07:00"]);
    sign(2);
    expect(await told()).toEqual(["08:00"]);
    await move("09:00");
    // 20 November is four days after the 16th.
    s.advance(14 * DAY);
    expect(await told()).toEqual(["08:00"]);
    s.advance(DAY);
    expect(await told()).toEqual(["09:00"]);
  });
});

test("its last change is not earlier when the month with the latest change has left it", async () => {
  const { address } = must(make("marta", OWN));
  const changedAt = async () => readByIcalJs(await (await ask(address)).text()).changedAt;
  await put("late", "2026-10-02");
  const before = await changedAt();
  s.advance(30 * 86_400_000); // 2 December: October has left.
  expect((await changedAt()) >= before).toBe(true);
  expect(await changedAt()).toBe("2026-12-01T00:00:00Z");
});

test("all of it is on the record, which holds", () => {
  const { id } = must(make("marta", OWN));
  const renewed = must(renewFeed(s.app, s.people.marta, id));
  must(withdrawFeed(s.app, s.people.petra, renewed.id));
  must(make("petra", STUDIO));
  must(make("petra", LOFT));
  const rows = s.db.raw.prepare("SELECT actor_id AS by, subject, kind FROM record WHERE kind LIKE 'feed-%'").all();
  expect(rows).toEqual([
    { by: "marta", subject: "person/marta", kind: "feed-made" },
    { by: "marta", subject: "person/marta", kind: "feed-renewed" },
    { by: "petra", subject: "person/marta", kind: "feed-withdrawn" },
    { by: "petra", subject: "studio", kind: "feed-made" },
    { by: "petra", subject: "room/loft", kind: "feed-made" },
  ]);
});
