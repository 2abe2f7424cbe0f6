/** Rooms, library, health and the edge itself: bodies, faults and what a stranger gets. */
import { afterEach, beforeEach, expect, test } from "vitest";
import * as firstRunRoute from "#app/api/first-run/route.ts";
import * as healthRoute from "#app/api/health/route.ts";
import * as libraryRoute from "#app/api/library/route.ts";
import * as roomRoute from "#app/api/rooms/[id]/route.ts";
import * as roomsRoute from "#app/api/rooms/route.ts";
import * as schemaRoute from "#app/api/schema/plan.json/route.ts";
import type { Equipment, Move } from "#lib/plan/schema.ts";
import type { Actor } from "#lib/policy/can.ts";
import { hashToken } from "#server/auth/device.ts";
import { ok } from "#server/base/result.ts";
import { MAX_BODY_BYTES } from "#server/http/body.ts";
import { guarded, guardedDevice } from "#server/http/respond.ts";
import { putMoves } from "#server/library/library.ts";
import { studioContext } from "#server/studio-data/studio-context.ts";
import { cookieOf, type Harness, outcome, PASSWORD, params, request, startHarness } from "./auth-harness.ts";

let h: Harness;
let cookie: string;

beforeEach(async () => {
  h = startHarness();
  const body = { studio: "Slipway Strength", name: "Ann", email: "ann@quay.example", password: PASSWORD };
  cookie = cookieOf(await firstRunRoute.POST(request("/api/first-run", { method: "POST", body })));
});
afterEach(() => h.stop());

const springs = [{ id: "light", label: "light", count: 2, stiffnessNPerMm: 0.1, preloadN: 5 }];
const equipment: Equipment = { name: "Six machines", carriageTravelMm: 900, springs };
const move: Move = {
  name: "Plank to pike",
  station: "carriage",
  position: "plank",
  facing: "front",
  hands: "front-bars",
  feet: "carriage",
  sides: "both",
  pattern: "flexion",
  muscles: { abdominals: 1 },
  resistance: "springs",
  tempo: { outSeconds: 2, backSeconds: 2 },
};
const lead: Actor = { kind: "person", id: "lead", roles: ["lead"] };

const addRoom = (body: unknown) => roomsRoute.POST(request("/api/rooms", { method: "POST", body, cookie }));
const changeRoom = (id: string, body: unknown) =>
  roomRoute.PATCH(request(`/api/rooms/${id}`, { method: "PATCH", body, cookie }), params({ id }));

test("a room is added with checked machines, changed, and listed", async () => {
  const made = await (await addRoom({ name: "Loft", equipment })).json();
  expect(made).toMatchObject({ name: "Loft", equipment });
  const longer = { ...equipment, carriageTravelMm: 950 };
  expect((await changeRoom(made.id, { equipment: longer, seen: equipment })).status).toBe(200);
  // A form opened before that takes nothing of it back, and one that names no base changes nothing.
  expect(await outcome(await changeRoom(made.id, { equipment, seen: equipment }))).toBe("409 changed-meanwhile");
  expect(await outcome(await changeRoom(made.id, { equipment }))).toBe("422 invalid");
  const list = await (await roomsRoute.GET(request("/api/rooms", { cookie }))).json();
  expect(list).toEqual([{ id: made.id, name: "Loft", equipment: longer }]);
});

test("a room that cannot be is refused, with the place named", async () => {
  await addRoom({ name: "Loft", equipment });
  expect(await outcome(await addRoom({ name: " loft ", equipment }))).toBe("409 name-taken");
  expect(await outcome(await changeRoom("nowhere", { name: "Attic" }))).toBe("404 not-found");
  const twice = { ...equipment, springs: [...springs, ...springs] };
  expect(await outcome(await addRoom({ name: "Attic", equipment: twice }))).toBe("422 invalid");
  const wrong = await addRoom({ name: "Attic", equipment: { ...equipment, springs: [{ ...springs[0], count: -1 }] } });
  const { error } = await wrong.json();
  expect(error.details.issues[0].pointer).toBe("/equipment/springs/0/count");
  expect(error.message).toMatch(/^equipment springs 0 count: /);
});

test("a plan's studio: library, machines and studio standards, fresh after every change", async () => {
  const { id } = await (await addRoom({ name: "Loft", equipment })).json();
  expect(studioContext(h.db, id)).toEqual({ moves: {}, equipment, standards: {} });
  putMoves(h.app, lead, { "plank-to-pike": move });
  const first = studioContext(h.db, id);
  expect(first.moves).toEqual({ "plank-to-pike": move });
  expect(studioContext(h.db, id).moves).toBe(first.moves);
  putMoves(h.app, lead, { "plank-to-pike": { ...move, name: "Pike" } });
  expect(studioContext(h.db, id).moves["plank-to-pike"]?.name).toBe("Pike");
  expect(studioContext(h.db, "nowhere").equipment.springs).toEqual([]);
});

test("the library is read by who may, and changed all or none", async () => {
  const put = (body: unknown) => libraryRoute.PUT(request("/api/library", { method: "PUT", body, cookie }));
  expect(await (await put({ moves: { "plank-to-pike": move } })).json()).toEqual({ stored: 1 });
  const half = { moves: { "knee-tuck": move, "bad-one": { ...move, station: "ceiling" } } };
  expect(await outcome(await put(half))).toBe("422 invalid");
  expect(await outcome(await put({ moves: { "Not An Id": move } }))).toBe("422 invalid");
  const read = await (await libraryRoute.GET(request("/api/library", { cookie }))).json();
  expect(read).toEqual({ moves: { "plank-to-pike": move } });
  expect(putMoves(h.app, { kind: "person", id: "c", roles: ["coach"] }, {})).toMatchObject({ ok: false });
  expect(await outcome(await libraryRoute.GET(request("/api/library")))).toBe("401 not-signed-in");
});

test("health needs no session; a document that cannot be saved or a dead database makes it 503", async () => {
  const health = async () => (await healthRoute.GET(request("/api/health"))).status;
  expect(await health()).toBe(200);
  const calm = h.app.documents.health;
  h.app.documents.health = () => ({ ...calm(), failing: ["plan/x"] });
  expect(await health()).toBe(503);
  h.app.documents.health = calm;
  h.db.raw.close();
  expect(await health()).toBe(503);
});

test("the plan file's schema is served as the 2020-12 draft it is written in", async () => {
  const response = schemaRoute.GET();
  expect(response.headers.get("content-type")).toBe("application/schema+json");
  const schema = await response.json();
  expect(schema.$schema).toBe("https://json-schema.org/draft/2020-12/schema");
  expect(schema.required).toContain("items");
});

test.each([
  ["text that is not JSON", { body: "{" }, "400 not-json"],
  ["nothing at all", { body: "" }, "400 not-json"],
  ["a body above the limit", { body: `"${"x".repeat(MAX_BODY_BYTES)}"` }, "413 too-large"],
  ["no content type", { body: "{}", headers: { "content-type": "" } }, "415 not-json-type"],
])("%s is refused with a sentence", async (_what, asking, expected) => {
  const response = await roomsRoute.POST(request("/api/rooms", { method: "POST", cookie, ...asking }));
  expect(await outcome(response)).toBe(expected);
});

test("bytes that are no UTF-8 are refused", async () => {
  const asking = new Request("http://localhost:4310/api/rooms", {
    method: "POST",
    headers: { origin: "http://localhost:4310", cookie, "content-type": "application/json" },
    body: new Uint8Array([0x22, 0xff, 0x22]),
  });
  expect(await outcome(await roomsRoute.POST(asking))).toBe("400 not-json");
});

test("a fault on the server's side gives nothing away; a full disk says so", async () => {
  const failing = (error: Error) =>
    guarded({}, () => {
      throw error;
    })(request("/api/rooms", { cookie }));
  const broken = await failing(new Error("password=hunter2"));
  expect(broken.status).toBe(500);
  expect(await broken.text()).not.toContain("hunter2");
  const full = Object.assign(new Error("full"), { code: "SQLITE_FULL" });
  expect(await outcome(await failing(full))).toBe("507 disk-full");
  expect(await outcome(await failing(Object.assign(new Error("busy"), { code: "SQLITE_BUSY" })))).toBe("503 storage");
});

test("a device is known by its token until that is taken back; a cookie is no token", async () => {
  const token = "t".repeat(43);
  h.db.raw.exec(
    `insert into device (id, name, room_id, token_hash, created_by) values ('d1', 'Tablet', 'loft', '${hashToken(token)}', 'x')`,
  );
  const route = guardedDevice({}, ({ device }) => ok(device));
  const ask = (headers: Record<string, string>) => route(request("/api/devices/cards", { cookie, headers }));
  expect(await (await ask({ authorization: `Bearer ${token}` })).json()).toEqual({
    kind: "device",
    id: "d1",
    roomId: "loft",
  });
  expect(await outcome(await ask({ authorization: `Bearer ${"u".repeat(43)}` }))).toBe("401 device-unknown");
  expect(await outcome(await ask({ authorization: `Bearer ${hashToken(token)}` }))).toBe("401 device-unknown");
  expect(await outcome(await ask({}))).toBe("401 device-unknown");
  h.db.raw.exec("update device set revoked_at = 1");
  expect(await outcome(await ask({ authorization: `Bearer ${token}` }))).toBe("401 device-unknown");
});
