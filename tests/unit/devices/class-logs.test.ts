/** Class logs from a device: taken once however often they are sent, of signed classes only, never changed. */
import { eq } from "drizzle-orm";
import { afterEach, beforeEach, describe, expect, test } from "vitest";
import * as logsRoute from "#app/api/devices/logs/route.ts";
import { listClassLogs } from "#db/repos/class-log-repo.ts";
import { insertDevice } from "#db/repos/device-repo.ts";
import { insertEdition } from "#db/repos/edition-repo.ts";
import { insertRoom } from "#db/repos/room-repo.ts";
import { deviceTable, planTable } from "#db/schema.ts";
import { canonicalJson } from "#lib/canonical/canonical.ts";
import { buildCard, sealCard } from "#lib/card/card.ts";
import { classLogUntil } from "#lib/floor/class-log.ts";
import type { ClassLog } from "#lib/floor/class-log-schema.ts";
import { hashToken } from "#server/auth/device.ts";
import { setSpringline } from "#server/context/springline.ts";
import { type Harness, outcome, request, startHarness } from "../auth-harness.ts";
import { samplePlan } from "../card/sample-plan.ts";

const OTHER = { id: "d2", name: "Wall", roomId: "harbour", codeHash: "y" };
const TOKEN = "a-token-of-thirty-two-characters";
let h: Harness;
let log: ClassLog;

beforeEach(() => {
  h = startHarness();
  setSpringline(h.app);
  const at = h.app.now();
  insertRoom(h.db, { id: "harbour", name: "Harbour room", equipment: samplePlan().equipment });
  insertDevice(h.db, {
    id: "d1",
    name: "Tablet",
    roomId: "harbour",
    codeHash: "x",
    codeExpiresAt: at,
    createdBy: "ann",
  });
  h.db.orm
    .update(deviceTable)
    .set({ tokenHash: hashToken(TOKEN), pairedAt: at })
    .run();
  const row = { id: "rows", title: "Rows", lengthSeconds: 300, ownerId: "ann", roomId: "harbour" };
  h.db.orm
    .insert(planTable)
    .values({ ...row, createdAt: at, updatedAt: at })
    .run();
  const plan = samplePlan();
  const card = buildCard({
    studio: { name: "Slipway Strength", town: "Port Ellery" },
    planId: "rows",
    number: 1,
    room: { id: "harbour", name: "Harbour room" },
    plan,
    issuedAt: at,
    expiresAt: at + 86_400_000,
  });
  insertEdition(h.db, {
    planId: "rows",
    number: 1,
    hash: card.edition.hash,
    signedBy: "ann",
    signedAt: at,
    note: null,
    planJson: canonicalJson(plan),
    card: sealCard(card, h.app.keys.keyId, h.app.keys.sign),
    findings: [],
  });
  const clock = { mono: 0, wall: at };
  const made = classLogUntil(card, [{ type: "start", at: 0 }], 300_000, {
    sessionId: "f".repeat(32),
    kind: "class",
    clock,
  });
  if (!made) throw new Error("the class began");
  log = made;
});
afterEach(() => h.stop());

const send = (body: unknown, token = TOKEN) =>
  logsRoute.POST(request("/api/devices/logs", { method: "POST", body, headers: { authorization: `Bearer ${token}` } }));
const stored = () => listClassLogs(h.db, "rows", 1);

describe("a class log", () => {
  test("is taken once, however often it is sent, two at once as well", async () => {
    const answers = await Promise.all([send(log), send(log), send(log)]);
    for (const answer of answers) expect(await answer.json()).toEqual({ sessionId: log.sessionId });
    expect(stored()).toEqual([{ log, roomId: "harbour", deviceId: "d1", receivedAt: expect.any(Number) }]);
  });

  test("of the same class that says something else is refused, and the first stays", async () => {
    await send(log);
    expect(await outcome(await send({ ...log, whole: !log.whole }))).toBe("409 log-differs");
    expect(stored().map((s) => s.log)).toEqual([log]);
  });

  test("told by another device of the room under the same session takes nothing away: both are kept", async () => {
    insertDevice(h.db, { ...OTHER, createdBy: "ann", codeExpiresAt: h.app.now() });
    h.db.orm
      .update(deviceTable)
      .set({ tokenHash: hashToken("b-token-of-thirty-two-characters"), pairedAt: h.app.now() })
      .where(eq(deviceTable.id, OTHER.id))
      .run();
    const forged = { ...log, whole: !log.whole };
    expect((await send(forged, "b-token-of-thirty-two-characters")).status).toBe(200);
    expect((await send(log)).status).toBe(200);
    expect((await send(log)).status).toBe(200);
    expect(stored().map((s) => [s.deviceId, s.log.whole])).toEqual([
      ["d1", log.whole],
      ["d2", !log.whole],
    ]);
  });

  test("that comes more often than a day has classes waits on its device; one with more rows than its class is refused", async () => {
    for (let n = 0; n < 60; n++) expect((await send({ ...log, sessionId: `${n}`.padStart(32, "0") })).status).toBe(200);
    expect(await outcome(await send(log))).toBe("429 too-many-logs");
    expect(await outcome(await send({ ...log, rows: Array(40).fill(log.rows[0]) }))).toBe("422 invalid");
  });

  test("is refused without a device, of a class nobody signed, with strange items, with a strange shape", async () => {
    expect(await outcome(await send(log, "nobody's"))).toBe("401 device-unknown");
    const other = { ...log.edition, hash: "0".repeat(64) };
    expect(await outcome(await send({ ...log, edition: other }))).toBe("404 no-such-edition");
    expect(await outcome(await send({ ...log, edition: { ...log.edition, number: 2 } }))).toBe("404 no-such-edition");
    const strange = log.rows.map((row) => (row.item === null ? row : { ...row, item: "not-there" }));
    expect(await outcome(await send({ ...log, rows: strange }))).toBe("422 invalid");
    expect(await outcome(await send({ ...log, who: "Ann" }))).toBe("422 invalid");
    expect(await outcome(await send({ ...log, elapsed: -1 }))).toBe("422 invalid");
    expect(stored()).toEqual([]);
  });

  test("is never changed, deleted or replaced, by nobody", async () => {
    await send(log);
    for (const sql of [
      "update class_log set kind = 'rehearsal'",
      "delete from class_log",
      "insert or replace into class_log select * from class_log",
    ])
      expect(() => h.db.raw.exec(sql)).toThrow(/a class log is never/);
  });
});
