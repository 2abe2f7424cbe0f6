/** An open month follows its studio through a real socket, without joining again: settings, rooms, people. */

import { createServer, type Server } from "node:http";
import type { AddressInfo } from "node:net";
import { afterEach, beforeEach, expect, test } from "vitest";
import { type MonthSession, openMonth } from "#app/_month/month-session.ts";
import { addMonths } from "#lib/calendar/days.ts";
import { STANDARD_FORMATS } from "#lib/formats/formats.ts";
import { addSlot } from "#lib/programme/write.ts";
import { monthDoc } from "#server/context/live-documents.ts";
import { setSpringline } from "#server/context/springline.ts";
import { type MonthSettings, readMonthSettings } from "#server/month-facts/month-settings.ts";
import { changeRoles, removePerson } from "#server/people/manage-people.ts";
import { createPlan } from "#server/plans/create-plan.ts";
import { changeMonthSettings } from "#server/programme/change-month-settings.ts";
import { monthStateOf, monthStudioOf } from "#server/programme/read-month-file.ts";
import { addRoom, changeRoom } from "#server/rooms/manage-rooms.ts";
import { attachSync } from "#server/sync/attach.ts";
import { eventually } from "#tests/support/eventually.ts";
import { EQUIPMENT, must, openStudio, outcome, type PlanStudio, ROOMS, type Who } from "#tests/support/plan-studio.ts";
import { signInAll } from "#tests/support/sign-in.ts";
import { testEdge } from "#tests/support/test-edge.ts";

let s: PlanStudio;
let http: Server;
let url: string;
let cookies: ReadonlyMap<string, string>;
/** The next month: nothing of it is over. */
let month: string;
const open: MonthSession[] = [];

beforeEach(async () => {
  s = openStudio({ clock: Date.now() });
  setSpringline(s.app);
  cookies = await signInAll(s, ["marta", "jonas", "sam"]);
  http = createServer();
  attachSync({ rooms: s.rooms, server: http });
  await new Promise<void>((resolve) => http.listen(0, "127.0.0.1", resolve));
  url = `ws://127.0.0.1:${(http.address() as AddressInfo).port}`;
  month = addMonths(new Date(s.app.now()).toISOString().slice(0, 7), 1);
  const slots = [
    { id: "one", date: `${month}-10`, start: "18:00", people: 9 },
    { id: "two", date: `${month}-10`, start: "18:50", people: 9 },
  ];
  await s.write(monthDoc(month), s.people.marta, (w) => {
    for (const slot of slots) addSlot(w, { ...slot, minutes: 45, room: ROOMS.harbour, coach: "marta" }, s.app.now());
  });
});
afterEach(async () => {
  for (const session of open.splice(0)) session.end();
  http.closeAllConnections();
  await new Promise((resolve) => http.close(resolve));
  setSpringline(undefined);
  await s.stop();
});

/** As the browser of that person has it; `today` is what it makes of the studio's zone. */
async function page(who: Who, today: (zone: string) => string = () => `${month}-01`): Promise<MonthSession> {
  const state = must(monthStateOf(s.app, month));
  const props = {
    ...{ month, generation: s.app.documents.generation(monthDoc(month)) ?? "", me: { id: who, name: who } },
    ...{
      writes: true,
      plans: [],
      used: { plans: [], hidden: [] },
      signed: null,
      accepted: [],
      formats: STANDARD_FORMATS,
    },
    studio: monthStudioOf(s.app, s.people[who], month, state),
  };
  // The test's edge sends one cookie of its own before these.
  const session = openMonth(props, testEdge({ origin: url, cookie: `none; ${cookies.get(who)}` }), today);
  open.push(session);
  await eventually("the month is open", () => session.getSnapshot().ready && session.saveState === "saved");
  return session;
}

const rules = (session: MonthSession) => session.getSnapshot().look.findings.map(({ id }) => id);
function set(change: Partial<MonthSettings>): void {
  const seen = must(readMonthSettings(s.app, s.people.petra));
  must(changeMonthSettings(s.app, s.people.petra, { settings: { ...seen, ...change }, seen }));
}
/** Within a second, as a person sees it. */
const soon = (what: string, is: () => boolean) => eventually(what, is, 1000);

test("limits, levels and machines: the findings of an open month are others at once", async () => {
  const marta = await page("marta");
  // Nine people on ten machines, five minutes between two classes.
  expect(rules(marta)).not.toContain("more-people-than-machines:one");
  expect(rules(marta)).toContain("coach-gap-short:marta:one+two");
  set({ machines: { [ROOMS.harbour]: 8 } });
  await soon("too few machines", () => rules(marta).includes("more-people-than-machines:one"));
  set({ limits: { gapMinutes: 5 } });
  await soon("a gap that is long enough", () => !rules(marta).includes("coach-gap-short:marta:one+two"));
  set({ standards: { "more-people-than-machines": { level: "off" } } });
  await soon("a rule that is off", () => !rules(marta).includes("more-people-than-machines:one"));
  expect(marta.saveState).toBe("saved");
});

test("the zone, and with it which day it is", async () => {
  const marta = await page("marta", (zone) => (zone === "Pacific/Auckland" ? `${month}-02` : `${month}-01`));
  set({ zone: "Pacific/Auckland" });
  await soon("the other zone", () => marta.getSnapshot().file.zone === "Pacific/Auckland");
  expect(marta.getSnapshot()).toMatchObject({ today: `${month}-02`, file: { asOf: `${month}-02` } });
});

test("a room that is added or renamed, and people who are given or lose a role or leave", async () => {
  const marta = await page("marta");
  const studio = () => marta.getSnapshot().studio;
  const room = must(addRoom(s.app, s.people.petra, { name: "Attic", equipment: EQUIPMENT }));
  await soon("the new room", () => studio().rooms[room.id]?.name === "Attic");
  must(changeRoom(s.app, s.people.petra, room.id, { name: "Crow’s nest" }));
  await soon("its new name", () => studio().rooms[room.id]?.name === "Crow’s nest");
  expect(studio().coaches.sam).toBeUndefined();
  must(changeRoles(s.app, s.people.petra, "sam", ["coach"]));
  await soon("who may teach now", () => studio().coaches.sam?.name === "Sam");
  must(removePerson(s.app, s.people.petra, "sam"));
  await soon("who has left", () => studio().coaches.sam === undefined);
});

test("each reader gets the plans that they may know, and what is typed meanwhile stays", async () => {
  const made = { title: "Jonas’s first try", lengthSeconds: 600, roomId: ROOMS.harbour };
  const draft = must(createPlan(s.app, s.people.jonas, made));
  const marta = await page("marta");
  marta.act((w) => addSlot(w, { id: "mine", date: `${month}-12`, start: "07:00", minutes: 45, plan: draft.id }, 0));
  set({ limits: { gapMinutes: 5 } });
  await soon("the new limit", () => marta.getSnapshot().file.limits?.gapMinutes === 5);
  expect(marta.getSnapshot().file.slots.map(({ id }) => id)).toContain("mine");
  await eventually("it is saved", () => marta.saveState === "saved");
  set({ limits: { gapMinutes: 6 } });
  await soon("the limit after", () => marta.getSnapshot().file.limits?.gapMinutes === 6);
  expect(JSON.stringify(marta.getSnapshot().studio)).not.toContain("first try");
});

test("a change that is refused tells nobody, and other months are told nothing", async () => {
  await page("marta");
  s.announced.length = 0;
  const seen = must(readMonthSettings(s.app, s.people.petra));
  expect(outcome(changeMonthSettings(s.app, s.people.marta, { settings: seen, seen }))).toBe("no-right");
  const others = { ...seen, zone: "Asia/Tokyo" };
  const late = changeMonthSettings(s.app, s.people.petra, {
    settings: { ...seen, zone: "Australia/Sydney" },
    seen: others,
  });
  expect(outcome(late)).toBe("changed-meanwhile");
  expect(outcome(addRoom(s.app, s.people.marta, { name: "Attic", equipment: EQUIPMENT }))).toBe("no-right");
  expect(s.announced).toEqual([]);
  set({ limits: { gapMinutes: 5 } });
  expect(new Set(s.announced.map(({ name }) => name))).toEqual(new Set([`month/${month}`]));
});
