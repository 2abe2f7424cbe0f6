/** A room's measured springs and own timings through the commands. */

import { afterEach, beforeEach, describe, expect, test } from "vitest";
import { readRoom } from "#db/repos/room-repo.ts";
import { lastStudioEvent } from "#db/repos/studio-event-repo.ts";
import { toMm, toNewtons } from "#lib/formats/units.ts";
import type { ReadingSheet } from "#lib/springs/readings.ts";
import { planDoc } from "#server/context/live-documents.ts";
import { createPlan } from "#server/plans/create-plan.ts";
import { type KeepReadings, keepReadings } from "#server/rooms/keep-readings.ts";
import { keepTimings, keepTimingsSchema } from "#server/rooms/keep-timings.ts";
import { changeRoom } from "#server/rooms/manage-rooms.ts";
import { writeGoodClass } from "#tests/support/good-class.ts";
import { EQUIPMENT, must, openStudio, outcome, type PlanStudio, ROOMS, type Who } from "#tests/support/plan-studio.ts";

let s: PlanStudio;
beforeEach(() => {
  s = openStudio();
});
afterEach(() => s.stop());

const LIGHT = { roomId: ROOMS.harbour, springId: "light" };
/** On the line 20 N + 0.2 N/mm exactly; the last one is not. */
const sheet = (last: Partial<ReadingSheet["readings"][number]> = {}): ReadingSheet => ({
  travelUnit: "cm",
  forceUnit: "N",
  readings: [
    { travelMm: 100, newtons: 40 },
    { travelMm: 200, newtons: 60 },
    { travelMm: 300, newtons: 80 },
    { travelMm: 400, newtons: 100 },
    { travelMm: 500, newtons: 150, ...last },
  ],
});
const spring = (id: string, roomId: string = ROOMS.harbour) =>
  readRoom(s.db, roomId)?.equipment.springs.find((x) => x.id === id);

/** As a page does that was opened just now. */
function keep(where: { roomId: string; springId: string }, body: Omit<KeepReadings, "seen">, who: Who = "petra") {
  const { stiffnessNPerMm = 0, preloadN = 0 } = spring(where.springId, where.roomId) ?? {};
  const readingsAt = readRoom(s.db, where.roomId)?.readings?.[where.springId]?.at ?? null;
  return keepReadings(s.app, s.people[who], where, { ...body, seen: { readingsAt, stiffnessNPerMm, preloadN } });
}

describe("scale readings", () => {
  test("are kept to be looked at again, and change no spring until they are used", () => {
    s.announced.length = 0;
    const room = must(keep(LIGHT, { sheet: sheet(), use: false }));
    expect(room.readings).toEqual({ light: { ...sheet(), at: s.app.now() } });
    expect(readRoom(s.db, ROOMS.harbour)).toEqual(room);
    expect(spring("light")).toEqual(EQUIPMENT.springs[0]);
    expect(s.announced).toEqual([]);
  });

  test("an empty sheet is nothing to save, and takes back what was kept", () => {
    const empty: ReadingSheet = { ...sheet(), readings: [] };
    expect(outcome(keep(LIGHT, { sheet: empty, use: false }))).toBe("no-readings");
    expect(lastStudioEvent(s.db, "spring", ROOMS.harbour)).toBeUndefined();
    must(keep(LIGHT, { sheet: sheet(), use: false }));
    expect(must(keep(LIGHT, { sheet: empty, use: false })).readings?.light?.readings).toEqual([]);
    expect(outcome(keep(LIGHT, { sheet: empty, use: false }))).toBe("no-readings");
  });

  test("used without the doubtful one: stiffness and preload of the line, and open plans are told", async () => {
    const { id } = must(
      createPlan(s.app, s.people.jonas, { title: "Pull", lengthSeconds: 600, roomId: ROOMS.harbour }),
    );
    await writeGoodClass(s, planDoc(id), [s.people.jonas, s.people.jonas]);
    s.announced.length = 0;
    must(keep(LIGHT, { sheet: sheet({ leftOut: true }), use: true }));
    expect(spring("light")).toEqual({ ...EQUIPMENT.springs[0], stiffnessNPerMm: 0.2, preloadN: 20 });
    expect(spring("firm")).toEqual(EQUIPMENT.springs[1]);
    expect(readRoom(s.db, ROOMS.harbour)?.readings?.light?.readings[4]).toMatchObject({ leftOut: true });
    await s.app.checks.idle();
    expect(s.announced.map((a) => a.news.t)).toEqual(["studio", "checked"]);
    expect(lastStudioEvent(s.db, "spring", ROOMS.harbour)).toMatchObject({
      actorId: "petra",
      data: { spring: { id: "light", stiffnessNPerMm: 0.2 }, readings: 5, use: true },
    });
  });

  test("kilograms-force: the standard acceleration of free fall, 9.80665 m/s2 (NIST SP 811, appendix B.8)", () => {
    expect(toNewtons(1, "kgf")).toBe(9.80665);
    const readings = [10, 20, 30, 40].map((cm) => ({
      travelMm: toMm(cm, "cm"),
      newtons: toNewtons(1 + cm / 10, "kgf"),
    }));
    must(
      keep(LIGHT, {
        sheet: { travelUnit: "cm", forceUnit: "kgf", readings },
        use: true,
      }),
    );
    // 1 kgf a decimetre: 9.80665 N / 100 mm, with 1 kgf before it moves.
    expect(spring("light")).toMatchObject({ stiffnessNPerMm: 0.0981, preloadN: 9.8 });
  });

  test("two readings, or readings of which none counts, are kept but give no line", () => {
    const two: ReadingSheet = { ...sheet(), readings: sheet().readings.slice(0, 2) };
    const refused = keep(LIGHT, { sheet: two, use: true });
    expect(refused).toMatchObject({ ok: false, error: { status: 422, code: "no-line" } });
    expect(readRoom(s.db, ROOMS.harbour)?.readings).toBeUndefined();
    must(keep(LIGHT, { sheet: two, use: false }));
    const none = sheet().readings.map((r) => ({ ...r, leftOut: true as const }));
    expect(outcome(keep(LIGHT, { sheet: { ...sheet(), readings: none }, use: true }))).toBe("no-line");
  });

  test("of a page opened before take nothing back that somebody kept meanwhile: readings or the spring itself", () => {
    const page = { readingsAt: null, stiffnessNPerMm: 0.1, preloadN: 5 };
    const mine = { sheet: sheet({ leftOut: true }), use: true, seen: page };
    const first = must(keep(LIGHT, { sheet: sheet(), use: false }));
    expect(outcome(keepReadings(s.app, s.people.petra, LIGHT, mine))).toBe("changed-meanwhile");
    const at = first.readings?.light?.at ?? 0;
    // Kept twice within one millisecond they are still told apart.
    must(keep(LIGHT, { sheet: sheet({ newtons: 151 }), use: false }));
    const stale = { ...mine, seen: { ...page, readingsAt: at } };
    expect(outcome(keepReadings(s.app, s.people.petra, LIGHT, stale))).toBe("changed-meanwhile");
    const [light, firm] = EQUIPMENT.springs;
    const stiffer = { ...EQUIPMENT, springs: [{ ...light, stiffnessNPerMm: 0.12 }, firm] } as typeof EQUIPMENT;
    must(changeRoom(s.app, s.people.petra, ROOMS.harbour, { equipment: stiffer, seen: EQUIPMENT }));
    const readingsAt = readRoom(s.db, ROOMS.harbour)?.readings?.light?.at ?? null;
    const before = { ...mine, seen: { ...page, readingsAt } };
    expect(outcome(keepReadings(s.app, s.people.petra, LIGHT, before))).toBe("changed-meanwhile");
    expect(spring("light")?.stiffnessNPerMm).toBe(0.12);
    must(keep(LIGHT, mine));
    expect(spring("light")?.stiffnessNPerMm).toBe(0.2);
  });

  test("go with their spring when it is taken out, and stay when the room is renamed", () => {
    must(keep(LIGHT, { sheet: sheet(), use: false }));
    must(keep({ ...LIGHT, springId: "firm" }, { sheet: sheet(), use: false }));
    must(changeRoom(s.app, s.people.petra, ROOMS.harbour, { name: "Quay room" }));
    expect(Object.keys(readRoom(s.db, ROOMS.harbour)?.readings ?? {})).toEqual(["light", "firm"]);
    const onlyFirm = { ...EQUIPMENT, springs: EQUIPMENT.springs.slice(1) };
    must(changeRoom(s.app, s.people.petra, ROOMS.harbour, { equipment: onlyFirm, seen: EQUIPMENT }));
    expect(Object.keys(readRoom(s.db, ROOMS.harbour)?.readings ?? {})).toEqual(["firm"]);
  });

  test("a room or a spring that is not there", () => {
    const at = (roomId: string, springId: string) =>
      outcome(keep({ roomId, springId }, { sheet: sheet(), use: false }));
    expect([at("attic", "light"), at(ROOMS.loft, "strong"), at(ROOMS.loft, "constructor")]).toEqual([
      "not-found",
      "not-found",
      "not-found",
    ]);
  });
});

describe("set-up timings", () => {
  test("one room's own seconds, and the findings of its plans move with them", async () => {
    const { id } = must(
      createPlan(s.app, s.people.jonas, { title: "Pull", lengthSeconds: 600, roomId: ROOMS.harbour }),
    );
    await writeGoodClass(s, planDoc(id), [s.people.jonas, s.people.jonas]);
    const rules = async () => (await s.findings(id)).map((f) => f.rule);
    expect(await rules()).not.toContain("transition-too-short");
    const given = { actionSeconds: { quarterTurn: 30 }, everyRoom: false };
    expect(must(keepTimings(s.app, s.people.petra, ROOMS.harbour, given))).toEqual({ rooms: 1 });
    expect(readRoom(s.db, ROOMS.harbour)?.equipment.actionSeconds).toEqual({ quarterTurn: 30 });
    expect(readRoom(s.db, ROOMS.loft)?.equipment.actionSeconds).toBeUndefined();
    expect(await rules()).toContain("transition-too-short");
  });

  test("every room at once; none of its own is no key at all; springs and readings stay", () => {
    must(keep(LIGHT, { sheet: sheet(), use: false }));
    must(keepTimings(s.app, s.people.petra, ROOMS.loft, { actionSeconds: { base: 0, springOn: 4 }, everyRoom: true }));
    for (const id of [ROOMS.harbour, ROOMS.loft]) {
      expect(readRoom(s.db, id)?.equipment.actionSeconds).toEqual({ base: 0, springOn: 4 });
    }
    must(keepTimings(s.app, s.people.petra, ROOMS.harbour, { actionSeconds: {}, everyRoom: false }));
    expect(readRoom(s.db, ROOMS.harbour)?.equipment).toEqual(EQUIPMENT);
    expect(Object.keys(readRoom(s.db, ROOMS.harbour)?.readings ?? {})).toEqual(["light"]);
    expect(outcome(keepTimings(s.app, s.people.petra, "attic", { actionSeconds: {}, everyRoom: true }))).toBe(
      "not-found",
    );
  });
});

describe("how much people differ", () => {
  const keepSpread = (spreadShare: number | null | undefined, everyRoom = false) =>
    must(keepTimings(s.app, s.people.petra, ROOMS.loft, { actionSeconds: {}, spreadShare, everyRoom }));
  const spreadOf = (id: string) => readRoom(s.db, id)?.equipment.spreadShare;

  test("is kept with the seconds, stays where it is not sent, and goes with null", () => {
    keepSpread(0.2);
    expect([spreadOf(ROOMS.loft), spreadOf(ROOMS.harbour)]).toEqual([0.2, undefined]);
    keepSpread(undefined);
    expect(spreadOf(ROOMS.loft)).toBe(0.2);
    keepSpread(0, true);
    expect([spreadOf(ROOMS.loft), spreadOf(ROOMS.harbour)]).toEqual([0, 0]);
    keepSpread(null, true);
    for (const id of [ROOMS.loft, ROOMS.harbour])
      expect(readRoom(s.db, id)?.equipment).not.toHaveProperty("spreadShare");
  });

  test("is a share from 0 to 1", () => {
    const body = (spreadShare: unknown) =>
      keepTimingsSchema.safeParse({ actionSeconds: {}, everyRoom: false, spreadShare });
    expect([0, 1, null, undefined].map((share) => body(share).success)).toEqual([true, true, true, true]);
    expect([-0.1, 1.1, "0.2"].map((share) => body(share).success)).toEqual([false, false, false]);
  });
});

test.each(["ines", "marta", "jonas", "noor", "sam"] as const)("%s measures nothing and times nothing", (who: Who) => {
  const actor = s.people[who];
  expect(outcome(keep(LIGHT, { sheet: sheet({ leftOut: true }), use: true }, who))).toBe("no-right");
  expect(outcome(keepTimings(s.app, actor, ROOMS.loft, { actionSeconds: {}, everyRoom: true }))).toBe("no-right");
  expect(readRoom(s.db, ROOMS.harbour)).toEqual({ id: ROOMS.harbour, name: "Harbour room", equipment: EQUIPMENT });
});
