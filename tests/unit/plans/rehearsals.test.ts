/** Rehearsals on the server: a draft as a card that nobody signed, what a device told of, and who may see which. */

import { afterEach, beforeEach, expect, test } from "vitest";
import type { Card } from "#lib/card/schema.ts";
import { verifyCard } from "#lib/card/verify-card.ts";
import { planParts } from "#lib/doc/layout.ts";
import { setText } from "#lib/doc/write.ts";
import { type ClassLog, classLogSchema } from "#lib/floor/class-log-schema.ts";
import { taughtTimes } from "#lib/floor/taught-class.ts";
import { readRehearsals } from "#server/class-log/read-rehearsals.ts";
import { takeLog } from "#server/class-log/take-log.ts";
import { planDoc } from "#server/context/live-documents.ts";
import { createPlan } from "#server/plans/create-plan.ts";
import { draftCard } from "#server/plans/draft-card.ts";
import { must, openStudio, outcome, type PlanStudio, ROOMS, type Who } from "#tests/support/plan-studio.ts";
import { signedClass, taughtLog } from "#tests/support/signed-class.ts";

let s: PlanStudio;
let id = "";
let card: Card;
beforeEach(async () => {
  s = openStudio();
  ({ id, card } = await signedClass(s));
});
afterEach(() => s.stop());

const device = { kind: "device", id: "tablet", roomId: ROOMS.harbour } as const;
const rehearsal = (more: Partial<ClassLog> = {}): ClassLog => ({
  ...taughtLog(card, [["next", 169]], 1, "rehearsal"),
  rehearsed: {
    changes: [{ item: "m2", after: "m1", planned: 20, estimate: 5, took: 9 }],
    lines: [{ item: "m1", kind: "start", text: "And go.", planned: 0.8, took: 1.1 }],
  },
  ...more,
});

test("a draft is a card of its own words, unsigned, under the next edition's number", async () => {
  await s.write(planDoc(id), s.people.jonas, (w) => setText(w, planParts(w.doc).title, "Pull & press again"));
  const draft = must(draftCard(s.app, s.people.jonas, id));
  expect(draft.edition).toMatchObject({ planId: id, number: 2, title: "Pull & press again" });
  expect(draft.plan.items).toHaveLength(card.plan.items.length);
  expect(draft.cautions.note.length).toBeGreaterThan(0);
  const forged = { card: draft, sha256: "0".repeat(64), keyId: "k", signature: "" };
  expect(verifyCard(forged, s.app.keys.publicKey, s.app.now()).ok).toBe(false);
  // A log of it names an edition that does not exist: it is not taken as a class.
  const log = { ...rehearsal(), edition: { planId: id, number: 2, hash: draft.edition.hash } };
  expect(outcome(takeLog(s.app, device, log))).toBe("no-such-edition");
});

test("a draft is for whoever may read the plan, and needs a move", () => {
  const may = (who: Who) => outcome(draftCard(s.app, s.people[who], id));
  expect([may("jonas"), may("ines")]).toEqual(["ok", "ok"]);
  expect([may("noor"), may("sam"), may("petra"), may("marta")]).toEqual(Array(4).fill("not-found"));
  expect(outcome(draftCard(s.app, null, id))).toBe("not-signed-in");
  expect(outcome(draftCard(s.app, device, id))).toBe("no-right");
  const empty = must(createPlan(s.app, s.people.jonas, { title: "", lengthSeconds: 600, roomId: ROOMS.harbour }));
  expect(outcome(draftCard(s.app, s.people.jonas, empty.id))).toBe("nothing-to-rehearse");
});

test("what a device told is read by whoever may read the plan, the latest first; classes are not among them", () => {
  const log = classLogSchema.parse(rehearsal());
  must(takeLog(s.app, device, log));
  must(takeLog(s.app, device, taughtLog(card, [["next", 169]], 2)));
  must(takeLog(s.app, device, { ...rehearsal(), sessionId: "r".repeat(32), startedAt: "2026-11-03T08:00:00.000Z" }));
  const told = must(readRehearsals(s.app, s.people.jonas, id));
  expect(told.map(({ id: session }) => session)).toEqual(["r".repeat(32), log.sessionId]);
  expect(told[1]).toMatchObject({ edition: 1, roomName: "Harbour room", rehearsed: log.rehearsed });
  expect(outcome(readRehearsals(s.app, s.people.ines, id))).toBe("ok");
  for (const who of ["noor", "sam", "petra"] as const) {
    expect(outcome(readRehearsals(s.app, s.people[who], id)), who).toBe("not-found");
  }
});

test("a class of long ago or of the future is a wrong clock's: it is refused in words and stays on the device", () => {
  const at = (startedAt: string) => takeLog(s.app, device, { ...rehearsal(), startedAt });
  for (const startedAt of [
    "0001-01-01T00:00:00Z",
    "2025-09-01T00:00:00Z",
    "2026-11-04T00:00:00Z",
    "9999-12-31T23:59:59Z",
  ])
    expect(outcome(at(startedAt)), startedAt).toBe("wrong-time");
  expect(outcome(at("2025-10-01T00:00:00Z"))).toBe("ok");
});

test("one of other items, or in which nothing was tapped, says nothing", () => {
  const lines = [{ item: "elsewhere", kind: "form", text: "x", planned: 1, took: 1 }] as const;
  expect(outcome(takeLog(s.app, device, rehearsal({ rehearsed: { changes: [], lines: [...lines] } })))).toBe("invalid");
  must(takeLog(s.app, device, rehearsal({ rehearsed: { changes: [], lines: [] } })));
  expect(must(readRehearsals(s.app, s.people.jonas, id))).toEqual([]);
  for (const took of [-1, Number.NaN, 1e9]) {
    const changes = [{ item: "m2", after: "m1", planned: 20, estimate: 5, took }];
    expect(classLogSchema.safeParse(rehearsal({ rehearsed: { changes, lines: [] } })).success).toBe(false);
  }
});

test("its log reads beside the plan as any other does", () => {
  const { rows } = taughtTimes(card.plan, rehearsal());
  expect(rows.map((row) => [row.key.trim(), row.own.took, row.change.took])).toEqual([
    ["opening", 60, 0],
    ["m1", 100, 0],
    ["m2", 120, 9],
    ["m3", 100, 20],
    ["m4", 100, 20],
    ["closing", 60, 0],
  ]);
});
