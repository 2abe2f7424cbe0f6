/** The states of the first steps, from what a studio holds. */
import { expect, test } from "vitest";
import {
  allDone,
  coachSteps,
  type FirstClass,
  type FirstStep,
  lastBackupWords,
  type StepId,
  type StudioFacts,
  studioSteps,
} from "#lib/desk/first-steps.ts";

const NOW = Date.UTC(2026, 10, 28, 9, 0);
const DAY = 86_400_000;
const NEW: StudioFacts = {
  writes: true,
  signs: true,
  people: 1,
  openInvitations: 0,
  worksAlone: false,
  rooms: [],
  example: { made: false, plan: null },
  classes: [],
  devices: { paired: 0, waiting: 0 },
  taught: 0,
  lastBackupAt: null,
  now: NOW,
};
const plan = (change: Partial<FirstClass> = {}): FirstClass => ({
  id: "p1",
  title: "Monday",
  moves: 5,
  copied: false,
  state: "in-writing",
  edition: 0,
  ...change,
});
const room = (...measured: boolean[]) => ({
  id: "r1",
  name: "Room 1",
  springs: measured.map((is, i) => ({ id: `s${i}`, measured: is, typical: true })),
});
const step = (id: StepId, change: Partial<StudioFacts> = {}): FirstStep => {
  const found = studioSteps({ ...NEW, ...change }).find((one) => one.id === id);
  if (!found) throw new Error(id);
  return found;
};
const leads = ({ act }: FirstStep) => (act?.kind === "go" ? act.href : (act?.kind ?? null));

test("a new studio: nothing is done, and each step says where it is taken or what it waits for", () => {
  const steps = studioSteps(NEW);
  expect(steps.map(({ id, state }) => `${id} ${state}`)).toEqual([
    "people open",
    "room open",
    "example open",
    "class open",
    "signing open",
    "device open",
    "taught open",
    "backup open",
  ]);
  expect(steps.map(leads)).toEqual([
    "/people?open=invite",
    "/studio?open=room#rooms",
    "example",
    "/desk?open=plan",
    null,
    "/studio?open=device#devices",
    null,
    "/studio#backups",
  ]);
});

test("people: alone, invited, joined, or alone for good", () => {
  expect(step("people")).toMatchObject({ state: "open", far: "Only you so far." });
  expect(step("people", { openInvitations: 2 })).toMatchObject({
    state: "begun",
    far: "Only you so far, 2 links not used yet.",
  });
  expect(step("people", { people: 3, openInvitations: 1 })).toMatchObject({
    state: "done",
    far: "3 people here, 1 link not used yet.",
  });
  expect(step("people", { worksAlone: true }).state).toBe("done");
});

test("a room: typical springs count and are said to be typical; the act leads to the next unmeasured one", () => {
  expect(step("room", { rooms: [room()] })).toMatchObject({ state: "open" });
  const typical = step("room", { rooms: [room(false, false)] });
  expect(typical).toMatchObject({ state: "done", far: "Room 1: springs typical, none measured yet." });
  const typed = { ...room(false), springs: [{ id: "s0", measured: false, typical: false }] };
  expect(step("room", { rooms: [typed] }).far).toBe("Room 1: springs as typed, none measured yet.");
  const some = step("room", { rooms: [room(true, false)] });
  expect(some.far).toBe("Room 1: 1 of 2 springs measured, the others typical.");
  expect(leads(some)).toBe("/studio/rooms/r1/springs/s1");
  expect(step("room", { rooms: [room(true, true)] })).toMatchObject({
    far: "Room 1: all 2 springs measured.",
    act: null,
  });
});

test("a class of one's own: an empty plan is begun, one with moves is done", () => {
  expect(step("class", { classes: [plan({ moves: 0 })] })).toMatchObject({
    state: "begun",
    far: "“Monday”: no move yet.",
  });
  expect(step("class", { classes: [plan({ moves: 0 }), plan({ id: "p2", moves: 1 })] })).toMatchObject({
    state: "done",
    far: "“Monday”: 1 move.",
    act: { href: "/plans/p2" },
  });
});

test("signing: from offering to reviewing to signed; one's own before the example", () => {
  expect(leads(step("signing", { classes: [plan({ moves: 0 })] }))).toBeNull();
  expect(leads(step("signing", { classes: [plan()] }))).toBe("/plans/p1?open=offer");
  const example = { made: true, plan: plan({ id: "ex" }) };
  expect(leads(step("signing", { example }))).toBe("/plans/ex?open=offer");
  expect(leads(step("signing", { example, classes: [plan()] }))).toBe("/plans/p1?open=offer");
  const offered = { classes: [plan({ state: "handed-in" as const })] };
  expect(step("signing", offered).state).toBe("begun");
  expect(leads(step("signing", offered))).toBe("/plans/p1?open=review");
  expect(leads(step("signing", { ...offered, signs: false }))).toBeNull();
  expect(step("signing", { classes: [plan({ edition: 2 })] })).toMatchObject({
    state: "done",
    far: "“Monday” is signed, edition 2.",
  });
});

test("a plan that the manager may not read is not named and not opened", () => {
  const hidden = { classes: [plan({ title: null })], signs: false };
  expect(step("class", { ...hidden, writes: false })).toMatchObject({
    state: "done",
    far: "A colleague’s class: 5 moves.",
    act: null,
  });
  expect(step("signing", hidden).act).toBeNull();
  expect(JSON.stringify(studioSteps({ ...NEW, ...hidden }))).not.toContain("p1");
});

test("a manager who does not write is offered no plan of theirs", () => {
  const steps = studioSteps({ ...NEW, writes: false, signs: false });
  expect(steps.filter(({ id }) => id === "example" || id === "class").map(leads)).toEqual([null, null]);
});

test("devices and classes taught", () => {
  expect(step("device", { devices: { paired: 0, waiting: 1 } })).toMatchObject({ state: "begun" });
  const paired = { devices: { paired: 1, waiting: 0 } };
  expect(step("device", paired)).toMatchObject({ state: "done", far: "1 device paired." });
  expect(leads(step("taught", paired))).toBeNull();
  expect(leads(step("taught", { ...paired, classes: [plan({ edition: 1 })] }))).toBe("/floor");
  expect(step("taught", { taught: 2 })).toMatchObject({ state: "done", far: "2 classes taught." });
});

test("a backup counts for a week", () => {
  expect(step("backup", { lastBackupAt: NOW - 6.9 * DAY }).state).toBe("done");
  expect(step("backup", { lastBackupAt: NOW - 7 * DAY })).toMatchObject({
    state: "begun",
    far: "The last backup is 7 days old.",
  });
  // A clock that was put back does not make a backup of tomorrow an old one.
  expect(step("backup", { lastBackupAt: NOW + DAY }).state).toBe("done");
  expect(lastBackupWords(0)).toBe("The last backup is from the last 24 hours.");
});

test("all done folds the list", () => {
  const done = studioSteps({
    ...NEW,
    worksAlone: true,
    rooms: [room(true)],
    example: { made: true, plan: null },
    classes: [plan({ edition: 1, state: "signed-off" })],
    devices: { paired: 1, waiting: 0 },
    taught: 1,
    lastBackupAt: NOW,
  });
  expect(allDone(done)).toBe(true);
  expect(allDone(studioSteps(NEW))).toBe(false);
});

test("a coach reads the example, writes, rehearses", () => {
  const none = coachSteps({ exampleMade: false, examplePlan: null, classes: [], rehearsals: 0 });
  expect(none.map(leads)).toEqual(["example", "/desk?open=plan", null]);
  const some = coachSteps({ exampleMade: true, examplePlan: plan({ id: "ex" }), classes: [], rehearsals: 1 });
  expect(some.map(({ state }) => state)).toEqual(["done", "open", "done"]);
  expect(some.map(leads)).toEqual(["example", "/desk?open=plan", "/plans/ex/rehearse"]);
});
