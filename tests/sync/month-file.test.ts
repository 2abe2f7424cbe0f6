/** A month's file on the server: plans by reader, in and out without loss, who may write, revisions as pages write. */
import type { Server } from "node:http";
import { createServer } from "node:http";
import type { AddressInfo } from "node:net";
import fc from "fast-check";
import { afterEach, beforeEach, expect, test } from "vitest";
import { canonicalJson } from "#lib/canonical/canonical.ts";
import { readPlan } from "#lib/doc/read.ts";
import { classIntensity } from "#lib/intensity/intensity.ts";
import { readMonthFile } from "#lib/month/file/read-month.ts";
import type { MonthFile, PlanFacts } from "#lib/month/types.ts";
import type { Plan } from "#lib/plan/schema.ts";
import { addSlot, changeSlot, takeOutSlot } from "#lib/programme/write.ts";
import { addLine } from "#lib/programme/write-pattern.ts";
import type { DocName } from "#lib/protocol/messages.ts";
import { WHOLE_BODY } from "#seed/plans/whole-body.ts";
import { runPlanCommand } from "#server/cli/commands.ts";
import { planDoc } from "#server/context/live-documents.ts";
import { setSpringline } from "#server/context/springline.ts";
import { monthSettings, readMonthSettings } from "#server/month-facts/month-settings.ts";
import { planFacts } from "#server/month-facts/plan-facts.ts";
import { createPlan } from "#server/plans/create-plan.ts";
import { importPlan } from "#server/plans/import-plan.ts";
import { changeMonthSettings } from "#server/programme/change-month-settings.ts";
import { fillMonthOf } from "#server/programme/fill-month.ts";
import { importMonthFile } from "#server/programme/import-month.ts";
import { importMonthTable, readMonthTable } from "#server/programme/month-csv.ts";
import { readMonthFileOf } from "#server/programme/read-month-file.ts";
import { withdrawEdition } from "#server/sign-off/withdraw-edition.ts";
import { studioContext } from "#server/studio-data/studio-context.ts";
import { attachSync } from "#server/sync/attach.ts";
import { often } from "#tests/support/long.ts";
import { must, openStudio, type PlanStudio, ROOMS, type Who } from "#tests/support/plan-studio.ts";
import { RawClient } from "#tests/support/raw-client.ts";
import { signInAll } from "#tests/support/sign-in.ts";
import { signedClass } from "#tests/support/signed-class.ts";
import { smallMonth } from "#tests/support/small-months.ts";

const NOVEMBER: DocName = { kind: "month", key: "2026-11" };
let s: PlanStudio;
beforeEach(() => {
  s = openStudio();
});
afterEach(() => s.stop());

const fileOf = (month: string, who: Who = "marta"): MonthFile => must(readMonthFileOf(s.app, s.people[who], month));
const bring = (file: MonthFile, replace = false) =>
  importMonthFile(s.app, s.people.marta, file.dates.from.slice(0, 7), { text: JSON.stringify(file), replace });

test("a plan's sums are those of the plan commands", () => {
  const id = must(importPlan(s.app, s.people.marta, JSON.stringify(WHOLE_BODY), ROOMS.harbour)).id;
  const plan: Plan = s.app.documents.withDoc(planDoc(id), (doc) => readPlan(doc, studioContext(s.db, ROOMS.harbour)));
  const answer = (name: string) => {
    const said = runPlanCommand(name, plan, undefined, []);
    if (!said.ok || !("json" in said)) throw new Error(name);
    return said.json as {
      total: number;
      talkSeconds: number;
      push: number;
      pull: number;
      groups: Record<string, { seconds: number }>;
    };
  };
  const facts = planFacts(s.app, s.people.marta, [id])[id] as PlanFacts;
  const balance = answer("balance");
  expect(facts).toMatchObject({
    ...{
      title: WHOLE_BODY.title,
      signed: false,
      seconds: answer("clock").total,
      talkSeconds: answer("cues").talkSeconds,
    },
    ...{ push: balance.push, pull: balance.pull, metMinutes: classIntensity(plan).metMinutes },
  });
  expect(facts.groups).toEqual(
    Object.fromEntries(Object.entries(balance.groups).map(([g, { seconds }]) => [g, seconds])),
  );
  const seconds = plan.items.reduce((sum, item) => sum + (item.kind === "move" ? item.seconds : 0), 0);
  expect(Object.values(facts.moves).reduce((a, b) => a + b, 0)).toBe(seconds);
  // Nothing changed: the very same object. The manager has no part in plans that are not signed, and neither is it there for Sam.
  expect(planFacts(s.app, s.people.ines, [id])[id]).toBe(facts);
  for (const who of ["petra", "sam", "noor"] as const)
    expect(planFacts(s.app, s.people[who], [id, "gone"])).toEqual({
      [id]: { title: "", known: false },
      gone: { title: "", known: false },
    });
});

test("of a signed plan it is the edition that counts, for everybody, until it is withdrawn", async () => {
  const { id } = await signedClass(s);
  const facts = planFacts(s.app, s.people.sam, [id])[id];
  expect(facts).toMatchObject({ signed: true, edition: 1 });
  expect((facts as PlanFacts).sha256).toMatch(/^[0-9a-f]{64}$/);
  must(withdrawEdition(s.app, s.people.ines, { planId: id, number: 1 }, "The firm spring is being replaced"));
  expect(planFacts(s.app, s.people.sam, [id])[id]).toEqual({ title: "", known: false });
  expect(planFacts(s.app, s.people.ines, [id])[id]).toMatchObject({ signed: false });
});

test("the news of a month carries its plans' sums, to each reader what they may know", async () => {
  const made = { title: "Jonas alone", lengthSeconds: 600, roomId: ROOMS.harbour, team: false };
  const { id } = must(createPlan(s.app, s.people.jonas, made));
  await s.write(NOVEMBER, s.people.marta, (w) =>
    addSlot(w, { id: "s1", date: "2026-11-04", start: "09:00", minutes: 45, plan: id }, 0),
  );
  expect(s.last(NOVEMBER, "plans", "marta")?.facts).toEqual({ [id]: { title: "", known: false } });
  expect(s.last(NOVEMBER, "plans", "ines")?.facts).toMatchObject({ [id]: { title: "Jonas alone", signed: false } });
});

test("a file comes in and goes out without loss, for the part that is not the studio's", () => {
  let n = 0;
  fc.assert(
    fc.property(smallMonth, (file) => {
      must(bring(file, n++ > 0));
      const out = fileOf("2026-03");
      expect(readMonthFile(canonicalJson(out))).toMatchObject({ ok: true });
      const sorted = ({ slots }: MonthFile) => [...slots].sort((a, b) => (a.id < b.id ? -1 : 1));
      if (n === 1) expect(sorted(out)).toEqual(sorted(file));
      for (const part of ["title", "dates", "holidays", "regulars", "themes", "pattern", "fill"] as const)
        if (part !== "dates" || file.dates.known) expect(out[part]).toEqual(file[part]);
      for (const part of ["rooms", "coaches", "plans"] as const) expect(out[part]).toMatchObject(file[part]);
    }),
    { numRuns: often(15, 300) },
  );
});

const smallFile = (over: Partial<MonthFile> = {}): MonthFile => ({
  ...{
    format: "springline.month/1",
    title: "March",
    studio: { uid: "6f0c4b52-7f4e-4c7e-9d1e-0d2a3b4c5d6e", name: "Tidewater" },
  },
  ...{ zone: "Europe/Lisbon", changedAt: "2026-02-20T10:00:00Z", dates: { from: "2026-03-01", to: "2026-03-31" } },
  rooms: {
    up: { name: "up there", machines: 6, equipment: "carriage" },
    r: { name: "harbour ROOM", machines: 6, equipment: "carriage" },
  },
  coaches: { m: { name: "MARTA", roles: ["coach"] }, z: { name: "Zoe Pell", roles: [] } },
  regulars: {},
  plans: { p: { title: "Lost", known: false } },
  slots: [
    { id: "a", date: "2026-03-02", start: "07:00", minutes: 30, room: "r", coach: "m", plan: "p" },
    { id: "b", date: "2026-03-03", start: "07:00", minutes: 30, room: "up", coach: "z" },
  ],
  ...over,
});

test("what the studio has is found by its name; what it has not is said and kept", () => {
  const { notes, before } = must(bring(smallFile()));
  expect(before.slots).toEqual([]);
  const kept = "which 1 class or line names. It is kept with the month.";
  expect(notes).toEqual(
    expect.arrayContaining([
      `This studio has no room “up there”, ${kept}`,
      `This studio has no coach “Zoe Pell”, ${kept}`,
    ]),
  );
  const out = fileOf("2026-03");
  expect(out.slots).toMatchObject([
    { id: "a", coach: s.people.marta.id },
    { id: "b", room: "up", coach: "z" },
  ]);
  expect([out.rooms.up?.name, out.coaches.z?.name, out.plans.p]).toEqual([
    "up there",
    "Zoe Pell",
    { title: "Lost", known: false },
  ]);
});

test("a month that has classes is replaced only by whoever says so, and can be brought back", () => {
  must(bring(smallFile()));
  const other = smallFile({ title: "Another", slots: [] });
  expect(bring(other)).toMatchObject({ ok: false, error: { status: 409, code: "month-not-empty" } });
  const { before } = must(bring(other, true));
  expect(fileOf("2026-03")).toMatchObject({ title: "Another", slots: [] });
  must(bring(before, true));
  expect(fileOf("2026-03").slots).toMatchObject([{ id: "a" }, { id: "b" }]);
  // What has stood for a day is called off and does not vanish; its number has risen.
  s.advance(2 * 86_400_000);
  must(bring(other, true));
  expect(fileOf("2026-03").slots).toMatchObject([
    { id: "a", out: true },
    { id: "b", out: true },
  ]);
  expect(fileOf("2026-03").slots.every(({ sequence }) => (sequence ?? 0) > 0)).toBe(true);
});

test("refuses what is no month file, another month's, and whoever may not write", () => {
  const text = JSON.stringify(smallFile());
  const said = (who: Who | null, given: string, month = "2026-03") => {
    const answer = importMonthFile(s.app, who && s.people[who], month, { text: given, replace: true });
    return answer.ok ? "taken" : answer.error.code;
  };
  expect(said("marta", "{")).toBe("not-a-month-file");
  expect(said("marta", text.replace('"minutes":30', '"minutes":3'))).toBe("not-a-month-file");
  expect(said("marta", text, "2026-04")).toBe("other-month");
  expect(said("marta", text, "2046-03")).toBe("not-found");
  for (const who of ["jonas", "sam"] as const) expect(said(who, text)).toBe("no-right");
  expect(said(null, text)).toBe("not-signed-in");
  for (const who of ["petra", "ines", "marta"] as const) expect(said(who, text)).toBe("taken");
});

test("a table goes out and comes back in; what it does not know is said by line", () => {
  must(
    bring(
      smallFile({
        slots: [
          {
            id: "a",
            date: "2026-03-02",
            start: "07:00",
            minutes: 30,
            room: "r",
            coach: "m",
            note: '=HYPERLINK("x"), "quoted"\nline',
          },
        ],
      }),
    ),
  );
  const { text } = must(readMonthTable(s.app, s.people.marta, "2026-03"));
  expect(text.split("\r\n")[0]).toBe("date,start,minutes,room,coach,theme,plan,regulars,note");
  expect(text).toContain("'=HYPERLINK");
  expect(must(importMonthTable(s.app, s.people.marta, "2026-03", text))).toEqual({ added: 0, there: 1, notes: [] });
  const april = text.replace("2026-03-02", "2026-04-02");
  expect(must(importMonthTable(s.app, s.people.marta, "2026-04", april))).toMatchObject({ added: 1, there: 0 });
  const [one] = fileOf("2026-04").slots.filter(({ date }) => date >= "2026-04-01");
  const [first] = fileOf("2026-03").slots;
  expect(one).toMatchObject({ start: "07:00", minutes: 30, room: first?.room, coach: first?.coach, note: first?.note });

  const table =
    "Coach;DATE;Start;Minutes;Room;Theme;Regulars;Price\nMarta;31/05/2026;7:30;45;Attic;Arms;Early tide;9\n";
  expect(must(importMonthTable(s.app, s.people.marta, "2026-05", table))).toEqual({
    ...{ added: 1, there: 0 },
    notes: [
      "Not taken: the columns Price. Understood are date, start, minutes, room, coach, theme, plan, regulars, note, end, people, also in German, French, Spanish and Portuguese.",
      "Line 2: the studio has no room “Attic”, so the class has none.",
    ],
  });
  const may = fileOf("2026-05");
  const made = may.slots.find(({ date }) => date === "2026-05-31");
  expect(made).toMatchObject({ start: "07:30", coach: s.people.marta.id });
  expect([may.themes?.[made?.theme ?? ""]?.name, may.regulars[made?.regulars?.[0] ?? ""]?.name]).toEqual([
    "Arms",
    "Early tide",
  ]);
  const refused = (row: string) => {
    const answer = importMonthTable(s.app, s.people.marta, "2026-05", `date,start,minutes\n${row}`);
    return answer.ok ? "" : answer.error.message;
  };
  expect(refused("05/04/2026,07:00,30")).toContain("Line 2: “05/04/2026” could be");
  expect(refused("2026-06-01,07:00,30")).toContain("is not a day of 2026-05");
  expect(refused("2026-05-01,25:00,30")).toContain("is no time");
  expect(refused("2026-05-01,07:00,3")).toContain("is no length");
});

test("a table is looked at first: what can be read may be taken, and nothing was before", () => {
  const table = "Datum;Uhrzeit;Bis;Kurs;Trainer\n1.5.2026;19.30 Uhr;20:15;Rücken;marta\n\n2.5.2026;bald;;Arme;\n";
  const asked = (taking?: "look" | "readable") => importMonthTable(s.app, s.people.marta, "2026-05", table, taking);
  const would = { added: 1, there: 0, notes: [], unread: ["Line 4: “bald” is no time. Write it as 07:30."] };
  expect(must(asked("look"))).toEqual({ ...would, notes: ["New here, and made with the classes: theme Rücken."] });
  expect(asked().ok, "whole or not at all").toBe(false);
  expect(fileOf("2026-05").slots).toEqual([]);
  expect(fileOf("2026-05").themes ?? {}).toEqual({});
  expect(must(asked("readable"))).toEqual(would);
  expect(must(asked("look"))).toMatchObject({ added: 0, there: 1, notes: [] });
  const other = importMonthTable(s.app, s.people.marta, "2026-05", table.replace("marta", "ines"), "look");
  expect(must(other).notes).toEqual([
    "1 class stands there with another coach, plan or theme than in the table, and stays as it is.",
  ]);
  expect(fileOf("2026-05").slots).toMatchObject([
    { date: "2026-05-01", start: "19:30", minutes: 45, coach: s.people.marta.id },
  ]);
});

test("a table of more classes than a month holds is refused whole, and one that fills it is taken", () => {
  const table = (rows: number) =>
    [
      "date,start,minutes",
      ...Array.from({ length: rows }, (_, n) => {
        const [day, five] = [1 + (n % 30), Math.floor(n / 30)];
        const time = `${String(6 + Math.floor(five / 12)).padStart(2, "0")}:${String((five % 12) * 5).padStart(2, "0")}`;
        return `2026-06-${String(day).padStart(2, "0")},${time},30`;
      }),
    ].join("\n");
  const taken = (rows: number) => {
    const answer = importMonthTable(s.app, s.people.marta, "2026-06", table(rows));
    return answer.ok ? answer.value.added : answer.error.message;
  };
  expect(taken(1001)).toBe("A month holds at most 1,000 classes, and would have 1,001. Nothing was changed.");
  expect(taken(900)).toBe(900);
  expect(taken(1001)).toContain("would have 1,001");
  expect(fileOf("2026-06").slots).toHaveLength(900);
  expect(taken(1000)).toBe(100);
});

test("a table far too long is refused before it is read; a cell that is quoted is cut", () => {
  const refused = (text: string) => {
    const answer = importMonthTable(s.app, s.people.marta, "2026-06", text);
    return answer.ok ? "" : answer.error.message;
  };
  const long = `date,start,minutes\n${"2026-06-12,09:00,30\n".repeat(50_000)}`;
  expect(refused(long)).toBe(
    "Nothing was taken. The table has more than 2000 lines. Bring the classes of one month in at a time.",
  );
  expect(refused(`date,start,minutes\n2026-06-12,"${"x".repeat(500_000)}",30`).length).toBeLessThan(200);
});

test("the days before the month come from the month before", () => {
  const slots = [
    { id: "a", date: "2026-02-27", start: "07:00", minutes: 30 },
    { id: "old", date: "2026-02-01", start: "07:00", minutes: 30 },
  ];
  must(
    importMonthFile(s.app, s.people.marta, "2026-02", {
      text: JSON.stringify(smallFile({ dates: { from: "2026-02-01", to: "2026-02-28" }, slots })),
      replace: false,
    }),
  );
  const march = fileOf("2026-03");
  expect(march.dates).toEqual({ from: "2026-03-01", to: "2026-03-31", known: "2026-02-01" });
  expect(march.slots.map(({ id }) => id).sort()).toEqual(["a", "old"]);
  expect(readMonthFile(canonicalJson(march)).ok).toBe(true);
});

test("settings are the manager's; the uid and the zone stay what they were", () => {
  const { uid, zone } = monthSettings(s.app);
  const seen = must(readMonthSettings(s.app, s.people.marta));
  const settings = {
    ...seen,
    zone: "Australia/Sydney",
    machines: { [ROOMS.harbour]: 8 },
    limits: { recoveryHours: 72 },
  };
  expect(changeMonthSettings(s.app, s.people.ines, { settings, seen })).toMatchObject({
    ok: false,
    error: { code: "no-right" },
  });
  must(changeMonthSettings(s.app, s.people.petra, { settings, seen }));
  // Another field, by somebody who has not seen the change: both hold. The same one: refused.
  const other = { settings: { ...seen, weekStart: 7 as const }, seen };
  expect(must(changeMonthSettings(s.app, s.people.petra, other))).toMatchObject({ zone: settings.zone, weekStart: 7 });
  const clash = { settings: { ...seen, zone: "Europe/Paris" }, seen };
  expect(changeMonthSettings(s.app, s.people.petra, clash)).toMatchObject({
    ok: false,
    error: { code: "changed-meanwhile" },
  });
  const file = fileOf("2026-03");
  expect(file).toMatchObject({ studio: { uid }, zone: "Australia/Sydney", limits: { recoveryHours: 72 } });
  expect(file.rooms[ROOMS.harbour]?.machines).toBe(8);
  expect(seen.zone).toBe(zone);
  // The clock of the test is 2 November 2026, 09:00 UTC: 20:00 in Sydney, which is 11 hours ahead in its summer (IANA tzdata).
  expect(file.asOf).toBe("2026-11-02");
  s.advance(5 * 3_600_000);
  expect(fileOf("2026-03").asOf).toBe("2026-11-03");
});

test("the manager writes the month by a raw socket; a trainee and the crew do not; the server counts every change once", async () => {
  await s.stop();
  s = openStudio({ clock: Date.now() });
  setSpringline(s.app);
  const cookies = await signInAll(s, ["petra", "jonas", "sam"]);
  const http: Server = createServer();
  attachSync({ rooms: s.rooms, server: http });
  await new Promise<void>((resolve) => http.listen(0, "127.0.0.1", resolve));
  const url = `ws://127.0.0.1:${(http.address() as AddressInfo).port}`;
  const month = new Date(s.app.now()).toISOString().slice(0, 7);
  const open = (who: Who) =>
    new RawClient(url, { kind: "month", key: month }, { cookies: cookies.get(who) ?? "", query: "d=2" });
  const petra = await open("petra").synced();
  const w = { doc: petra.doc, origin: "petra" };
  petra.edit(() => addSlot(w, { id: "x", date: `${month}-10`, start: "07:00", minutes: 30, coach: "c1" }, s.app.now()));
  petra.edit(() => addLine(w, { id: "tue", days: [2], start: "07:00", minutes: 30 }, s.app.now()));
  await petra.saved();
  petra.edit(() => changeSlot(w, "x", { start: "07:30" }));
  petra.edit(() => changeSlot(w, "x", { locked: true }));
  petra.edit(() => takeOutSlot(w, "x", { at: s.app.now(), signedAt: s.app.now() }));
  await petra.saved();
  const slot = fileOf(month, "petra").slots.find(({ id }) => id === "x");
  expect(slot).toMatchObject({ start: "07:30", out: true });
  // Begins at another time, and is called off: as one or as two changes, as the server takes what comes in one turn.
  expect([1, 2]).toContain(slot?.sequence);
  const sam = await open("sam").synced();
  sam.edit((doc) => addSlot({ doc, origin: "sam" }, { id: "y", date: `${month}-10`, start: "07:00", minutes: 30 }, 0));
  expect(await sam.closed()).toBe(4403);
  const forged = await open("petra").synced();
  forged.edit((doc) => doc.getMap("revisions").set("x", { n: 99, at: 0 }));
  expect(await forged.closed()).not.toBe(1000);
  const jonas = open("jonas");
  expect(await jonas.closed()).toBeGreaterThan(4000);
  expect(fileOf(month, "petra").slots.some(({ id }) => id === "y")).toBe(false);
  expect(fileOf(month, "petra").slots.find(({ id }) => id === "x")?.sequence).toBe(slot?.sequence);
  petra.end();
  http.closeAllConnections();
  await new Promise((resolve) => http.close(resolve));
  setSpringline(undefined);
});

test("plans for empty classes are worked out from the month as the server has it, for whoever may write; nothing is written", async () => {
  const { marta, sam, petra } = s.people;
  const { id: planId } = await signedClass(s);
  await s.write(NOVEMBER, marta, (w) => {
    addSlot(w, { id: "open", date: "2026-11-20", start: "18:00", minutes: 55, room: ROOMS.harbour }, s.app.now());
    addSlot(w, { id: "held", date: "2026-11-21", start: "18:00", minutes: 55, locked: true }, s.app.now());
  });
  const before = fileOf("2026-11");
  const { answer, explained, slots } = must(await fillMonthOf(s.app, marta, "2026-11"));
  expect(answer).toMatchObject({ proven: true, slots: [{ slot: "open", plan: planId }] });
  expect(explained).toMatchObject([{ slot: "open", plan: planId, text: expect.stringContaining("Next best") }]);
  expect(slots).toMatchObject([{ id: "open", start: "18:00" }]);
  expect(fileOf("2026-11")).toEqual(before);
  expect(must(await fillMonthOf(s.app, petra, "2026-11")).answer.slots).toHaveLength(1);
  expect(await fillMonthOf(s.app, sam, "2026-11")).toMatchObject({ ok: false, error: { status: 403 } });
  expect(await fillMonthOf(s.app, marta, "1999-01")).toMatchObject({ ok: false, error: { status: 404 } });
});

test("who joins a month is told what its studio is now, as they may know it", async () => {
  const { marta } = s.people;
  await signedClass(s);
  const basis = () =>
    s.host
      .welcome?.(NOVEMBER, { sessionId: "x", userId: marta.id, name: "Marta" })
      .find(({ t }) => t === "month-basis");
  const seen = must(readMonthSettings(s.app, s.people.petra));
  const settings = { ...seen, limits: { ...seen.limits, recoveryHours: 36 } };
  must(changeMonthSettings(s.app, s.people.petra, { settings, seen }));
  const { asOf: _, studio, ...file } = fileOf("2026-11");
  expect(basis()).toMatchObject({ basis: { name: studio.name, zone: file.zone, limits: { recoveryHours: 36 } } });
  expect(basis()).toMatchObject({ basis: { rooms: file.rooms, plans: file.plans } });
});
