/** A month with as many classes as it may have: two people at once get no further, each is told in words, and nothing is lost. */

import { createServer, type Server } from "node:http";
import type { AddressInfo } from "node:net";
import { afterEach, beforeEach, expect, test } from "vitest";
import { monthActs } from "#app/_month/month-acts.ts";
import { type MonthSession, openMonth } from "#app/_month/month-session.ts";
import { STANDARD_FORMATS } from "#lib/formats/formats.ts";
import type { MonthSlot } from "#lib/month/types.ts";
import { monthParts } from "#lib/programme/layout.ts";
import { overFullWords } from "#lib/programme/room-left.ts";
import { addSlot, putBackSlot, takeOutSlot } from "#lib/programme/write.ts";
import { CLOSE } from "#lib/protocol/close.ts";
import { monthDoc } from "#server/context/live-documents.ts";
import { setSpringline } from "#server/context/springline.ts";
import { monthStateOf, monthStudioOf } from "#server/programme/read-month-file.ts";
import { attachSync } from "#server/sync/attach.ts";
import { eventually } from "#tests/support/eventually.ts";
import { must, openStudio, type PlanStudio, type Who } from "#tests/support/plan-studio.ts";
import { signInAll } from "#tests/support/sign-in.ts";
import { testEdge } from "#tests/support/test-edge.ts";

/** A thousand classes are much to work out on a busy machine. */
const LONG_MS = 60_000;

let s: PlanStudio;
let http: Server;
let url: string;
let cookies: ReadonlyMap<string, string>;
let month: string;
const open: MonthSession[] = [];

beforeEach(async () => {
  s = openStudio({ clock: Date.now() });
  setSpringline(s.app);
  cookies = await signInAll(s, ["marta", "ines"]);
  http = createServer();
  attachSync({ rooms: s.rooms, server: http });
  await new Promise<void>((resolve) => http.listen(0, "127.0.0.1", resolve));
  url = `ws://127.0.0.1:${(http.address() as AddressInfo).port}`;
  month = new Date(s.app.now()).toISOString().slice(0, 7);
});
afterEach(async () => {
  for (const session of open.splice(0)) session.end();
  http.closeAllConnections();
  await new Promise((resolve) => http.close(resolve));
  setSpringline(undefined);
  await s.stop();
});

const slot = (id: string): MonthSlot => ({ id, date: `${month}-10`, start: "07:00", minutes: 45 });
/** So many classes, and one more that was taken out for good. */
function fill(count: number): void {
  s.app.documents.transact(monthDoc(month), "marta", (doc) => {
    const w = { doc, origin: "marta" };
    for (let i = 0; i < count; i++) addSlot(w, slot(`c${i}`), s.app.now());
    addSlot(w, slot("gone"), s.app.now());
    takeOutSlot(w, "gone", { at: s.app.now(), signedAt: null });
  });
}
async function page(who: Who): Promise<MonthSession> {
  const studio = monthStudioOf(s.app, s.people[who], month, must(monthStateOf(s.app, month)));
  const props = {
    ...{ month, generation: s.app.documents.generation(monthDoc(month)) ?? "", me: { id: who, name: who } },
    ...{
      writes: true,
      plans: [],
      used: { plans: [], hidden: [] },
      signed: null,
      accepted: [],
      studio,
      formats: STANDARD_FORMATS,
    },
  };
  // The test's edge sends one cookie of its own before these.
  const edge = testEdge({ origin: url, cookie: `none; ${cookies.get(who)}` });
  const session = openMonth(props, edge, () => `${month}-01`);
  open.push(session);
  await eventually("the month is open", () => session.getSnapshot().ready && session.saveState === "saved", LONG_MS);
  return session;
}
const onServer = () =>
  s.app.documents.withDoc(monthDoc(month), (doc) =>
    [...monthParts(doc).slots.entries()].flatMap(([id, at]) => (at.get("deleted") === undefined ? [id] : [])),
  );

test("two add the last class at once: one is in, the other is told, keeps the class, and goes on once it is undone", async () => {
  fill(999);
  const [marta, ines] = [await page("marta"), await page("ines")];
  marta.act((w) => addSlot(w, slot("hers"), s.app.now()));
  ines.act((w) => addSlot(w, slot("mine"), s.app.now()));
  const closed = () => [marta, ines].filter((one) => one.getSnapshot().closeCode === CLOSE.full.code);
  await eventually("one of them is refused", () => closed().length === 1, LONG_MS);
  const [late] = closed();
  const id = late === marta ? "hers" : "mine";
  expect(late?.getSnapshot().closeSentence).toBe(CLOSE.full.text);
  expect(late?.getSnapshot().file.slots.map((one) => one.id)).toContain(id);
  expect(onServer()).toHaveLength(1000);
  late?.undo();
  late?.reconnect();
  await eventually("it is connected and saved again", () => late?.saveState === "saved", LONG_MS);
  expect(onServer()).toHaveLength(1000);
  expect(onServer()).not.toContain(id);
  late?.act((w) => takeOutSlot(w, "c1", { at: s.app.now(), signedAt: null }));
  await eventually("room again", () => onServer().length === 999, LONG_MS);
});

test("a page does not put a class back where there is no room, and says so", async () => {
  fill(1000);
  const marta = await page("marta");
  const gone = marta.getSnapshot().deleted.find((one) => one.slot.id === "gone")?.slot;
  if (!gone) throw new Error("it was taken out");
  expect(monthActs(marta, STANDARD_FORMATS).bringBack(gone)).toBe(
    "A month holds at most 1,000 classes, and would have 1,001. Nothing was changed.",
  );
  expect(marta.getSnapshot().deleted).toHaveLength(1);
});

test("put back by one and added by another at once: all are kept, and how many are too many is said", async () => {
  fill(999);
  const [marta, ines] = [await page("marta"), await page("ines")];
  marta.act((w) => putBackSlot(w, "gone"));
  ines.act((w) => addSlot(w, slot("mine"), s.app.now()));
  await eventually(
    "both are settled",
    () => [marta, ines].every((one) => one.saveState === "saved" || one.getSnapshot().closeCode !== null),
    LONG_MS,
  );
  const words = [marta, ines].map((one) => {
    const { closeSentence, look } = one.getSnapshot();
    return closeSentence ?? overFullWords(look.slots.length);
  });
  expect(words.filter((said) => said !== undefined).length).toBeGreaterThan(0);
  expect(overFullWords(1003)).toBe(
    "This month has 1,003 classes, 3 more than its file can hold. All are kept. Take 3 out: until then the month’s file is refused wherever it is read.",
  );
  expect(overFullWords(1000)).toBeUndefined();
});
