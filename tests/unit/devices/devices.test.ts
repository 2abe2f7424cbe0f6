/** Cue devices: made by the manager, paired by a code that works once, and trusted with the cards of one room only. */
import { afterEach, beforeEach, describe, expect, test } from "vitest";
import type * as Y from "yjs";
import * as deviceRoute from "#app/api/devices/[id]/route.ts";
import * as cardsRoute from "#app/api/devices/cards/route.ts";
import * as pairRoute from "#app/api/devices/pair/route.ts";
import * as devicesRoute from "#app/api/devices/route.ts";
import * as firstRunRoute from "#app/api/first-run/route.ts";
import * as roomsRoute from "#app/api/rooms/route.ts";
import { insertEdition } from "#db/repos/edition-repo.ts";
import { insertRoom } from "#db/repos/room-repo.ts";
import { planTable } from "#db/schema.ts";
import { canonicalJson } from "#lib/canonical/canonical.ts";
import { buildCard, type CardEnvelope, sealCard, verifyCard } from "#lib/card/card.ts";
import { createMonthDoc } from "#lib/programme/create.ts";
import { hashToken } from "#server/auth/device.ts";
import { CODE_LENGTH, CODE_LIVES_MS, CODE_SIGNS, newPairingCode, readPairingCode } from "#server/auth/pairing-code.ts";
import { DocUnavailable } from "#server/context/live-documents.ts";
import { type Springline, setSpringline } from "#server/context/springline.ts";
import { addDevice } from "#server/devices/manage-devices.ts";
import { GUESSES } from "#server/devices/pair-device.ts";
import { studioClock } from "#server/month-facts/month-settings.ts";
import { addShown } from "#tests/support/shown-slot.ts";
import { cookieOf, type Harness, outcome, PASSWORD, params, request, startHarness } from "../auth-harness.ts";
import { samplePlan } from "../card/sample-plan.ts";

let h: Harness;
let cookie = "";
beforeEach(async () => {
  h = startHarness();
  setSpringline(withMonths(h.app));
  const manager = {
    studio: "Slipway Strength",
    town: "Port Ellery",
    name: "Ann",
    email: "ann@quay.example",
    password: PASSWORD,
  };
  cookie = cookieOf(await firstRunRoute.POST(request("/api/first-run", { method: "POST", body: manager })));
  for (const id of ["harbour", "loft"]) insertRoom(h.db, { id, name: `Room ${id}`, equipment: samplePlan().equipment });
});
afterEach(() => {
  months.clear();
  h.stop();
});

/** The programme's documents, as the live rooms would hand them out. */
const months = new Map<string, Y.Doc>();
const withMonths = (app: Springline): Springline => ({
  ...app,
  documents: {
    ...app.documents,
    generation: () => undefined,
    withDoc: (name, fn) => {
      const doc = months.get(name.key);
      if (!doc) throw new DocUnavailable("unknownDocument", "no such month");
      return fn(doc);
    },
  },
});
/** Local days from now at a time. */
function slotIn(days: number, time: string, slot: { roomId: string; planId: string }): string {
  const date = studioClock(h.app, h.app.now() + days * 86_400_000).slice(0, 10);
  const month = date.slice(0, 7);
  const doc = months.get(month) ?? createMonthDoc(month);
  months.set(month, doc);
  addShown(
    { doc, origin: "test" },
    { id: `s${days}-${slot.planId}`, date, time, minutes: 50, theme: "", coachId: null, note: "", ...slot },
  );
  return `${date}T${time}`;
}

async function newDevice(roomId = "harbour"): Promise<{ id: string; code: string; expiresAt: number }> {
  const response = await devicesRoute.POST(
    request("/api/devices", { method: "POST", cookie, body: { name: "Tablet by the door", roomId } }),
  );
  expect(response.status).toBe(201);
  return response.json();
}
const pair = (code: string, network = "10.0.0.1") => {
  const headers: Record<string, string> = network === "" ? {} : { "x-springline-network": network };
  return pairRoute.POST(request("/api/devices/pair", { method: "POST", body: { code }, headers }));
};
const cards = (token: string) =>
  cardsRoute.GET(request("/api/devices/cards", { headers: { authorization: `Bearer ${token}` } }));

/** A signed edition of a plan, for a room. */
function sign(planId: string, number: number, roomId: string): void {
  const at = h.app.now();
  if (number === 1) {
    h.db.orm
      .insert(planTable)
      .values({ id: planId, title: planId, lengthSeconds: 300, ownerId: "ann", roomId, createdAt: at, updatedAt: at })
      .run();
  }
  const plan = { ...samplePlan(), title: `${planId} ${number}` };
  const card = buildCard({
    studio: { name: "Slipway Strength", town: "Port Ellery" },
    planId,
    number,
    room: { id: roomId, name: roomId },
    plan,
    issuedAt: at,
    expiresAt: at + 86_400_000,
  });
  const envelope = sealCard(card, h.app.keys.keyId, h.app.keys.sign);
  const { hash } = card.edition;
  insertEdition(h.db, {
    planId,
    number,
    hash,
    signedBy: "ann",
    signedAt: at,
    note: null,
    planJson: canonicalJson(plan),
    card: envelope,
    findings: [],
  });
}

describe("pairing", () => {
  test("a code is shown once, stored hashed, and makes a token that is stored hashed", async () => {
    const { code } = await newDevice();
    expect(code).toHaveLength(CODE_LENGTH);
    const paired = await (await pair(code)).json();
    expect(paired).toMatchObject({
      room: { id: "harbour", name: "Room harbour" },
      studio: { name: "Slipway Strength" },
    });
    expect(paired.publicKey).toBe(h.app.keys.publicKey);
    const stored = JSON.stringify(h.db.raw.prepare("select * from device").all());
    expect(stored).not.toContain(code);
    expect(stored).not.toContain(paired.token);
    expect(stored).toContain(hashToken(paired.token));
  });

  test("as people type it: small letters, spaces, a hyphen", async () => {
    const { code } = await newDevice();
    expect((await pair(` ${code.slice(0, 4).toLowerCase()}-${code.slice(4)} `)).status).toBe(200);
  });

  test("a code works once, even for two at the same moment", async () => {
    const { code } = await newDevice();
    const outcomes = await Promise.all((await Promise.all([pair(code), pair(code)])).map(outcome));
    expect(outcomes.sort()).toEqual(["200", "404 code-unknown"]);
  });

  test("a code lives ten minutes", async () => {
    const early = await newDevice();
    h.advance(CODE_LIVES_MS - 1000);
    expect(await outcome(await pair(early.code))).toBe("200");
    const late = await newDevice();
    h.advance(CODE_LIVES_MS);
    expect(await outcome(await pair(late.code))).toBe("404 code-unknown");
  });

  test("guesses from one network are stopped, others go on, and time forgives", async () => {
    const { code } = await newDevice();
    for (let n = 0; n < GUESSES.free; n += 1) expect(await outcome(await pair("22222222"))).toBe("404 code-unknown");
    const refused = await pair(code);
    expect(refused.status).toBe(429);
    expect((await refused.json()).error.message).toContain("Wait 10 seconds and try again.");
    expect(await outcome(await pair(code, "10.0.0.2"))).toBe("200");
    h.advance(GUESSES.firstWaitMs);
    expect(await outcome(await pair((await newDevice()).code))).toBe("200");
  });

  test("a stranger with many addresses, or one behind the proxy that all come by, keeps no device of the studio out", async () => {
    const { code } = await newDevice();
    for (let n = 0; n < 300; n += 1) await pair("no such code", `10.1.${n}.1`);
    for (let n = 0; n < 300; n += 1) await pair("no such code", "");
    expect(await outcome(await pair(code, ""))).toBe("200");
  });

  test("codes have no signs that look alike, and use all the others", () => {
    expect(CODE_SIGNS).not.toMatch(/[01OILU]/);
    const seen = new Set(Array.from({ length: 200 }, newPairingCode).join(""));
    expect(seen.size).toBe(CODE_SIGNS.length);
    expect(readPairingCode("2222 222O")).toBeNull();
  });

  test("another page's request is refused", async () => {
    const { code } = await newDevice();
    const foreign = request("/api/devices/pair", {
      method: "POST",
      body: { code },
      headers: { origin: "http://else.example" },
    });
    expect(await outcome(await pairRoute.POST(foreign))).toBe("403 other-origin");
  });
});

describe("a device's token", () => {
  const tokenOf = async (roomId: string): Promise<{ id: string; token: string }> => {
    const { id, code } = await newDevice(roomId);
    return { id, token: (await (await pair(code)).json()).token };
  };

  test("gets the newest signed card of every plan of its room, verifiable with the key it was paired with", async () => {
    sign("rows", 1, "harbour");
    sign("rows", 2, "harbour");
    sign("reaches", 1, "harbour");
    sign("other", 1, "loft");
    const { token } = await tokenOf("harbour");
    const answer = await (await cards(token)).json();
    const verdicts = answer.cards.map((envelope: unknown) => verifyCard(envelope, h.app.keys.publicKey, h.app.now()));
    expect(verdicts.map((v: { card?: { edition: { title: string } } }) => v.card?.edition.title)).toEqual([
      "reaches 1",
      "rows 2",
    ]);
    expect(answer.room).toEqual({ id: "harbour", name: "Room harbour" });
  });

  test("learns when each plan is next taught in its room, past slots left out", async () => {
    sign("rows", 1, "harbour");
    slotIn(-1, "18:00", { roomId: "harbour", planId: "rows" });
    slotIn(9, "07:30", { roomId: "harbour", planId: "rows" });
    const next = slotIn(2, "18:00", { roomId: "harbour", planId: "rows" });
    slotIn(1, "18:00", { roomId: "loft", planId: "rows" });
    const { token } = await tokenOf("harbour");
    expect((await (await cards(token)).json()).nextSlots).toEqual({ rows: next });
  });

  test("gets a card signed for another room when a slot brings the plan into its own", async () => {
    sign("other", 1, "loft");
    const { token } = await tokenOf("harbour");
    expect((await (await cards(token)).json()).cards).toEqual([]);
    slotIn(1, "18:00", { roomId: "harbour", planId: "other" });
    slotIn(1, "19:00", { roomId: "harbour", planId: "unsigned" });
    const { cards: got } = await (await cards(token)).json();
    expect(got.map((envelope: CardEnvelope) => envelope.card.edition.planId)).toEqual(["other"]);
  });

  test("is dead at once when it is taken back, and the device leaves the list", async () => {
    const { id, token } = await tokenOf("harbour");
    expect((await cards(token)).status).toBe(200);
    const gone = await deviceRoute.DELETE(request(`/api/devices/${id}`, { method: "DELETE", cookie }), params({ id }));
    expect(gone.status).toBe(200);
    expect(await outcome(await cards(token))).toBe("401 device-unknown");
    expect(await (await devicesRoute.GET(request("/api/devices", { cookie }))).json()).toEqual([]);
  });

  test("a code that was taken back pairs nothing", async () => {
    const { id, code } = await newDevice();
    await deviceRoute.DELETE(request(`/api/devices/${id}`, { method: "DELETE", cookie }), params({ id }));
    expect(await outcome(await pair(code))).toBe("404 code-unknown");
  });

  test("opens nothing that is for people", async () => {
    const { id, token } = await tokenOf("harbour");
    const headers = { authorization: `Bearer ${token}`, cookie: `springline.session_token=${token}` };
    expect(await outcome(await devicesRoute.GET(request("/api/devices", { headers })))).toBe("401 not-signed-in");
    expect(await outcome(await roomsRoute.GET(request("/api/rooms", { headers })))).toBe("401 not-signed-in");
    const take = deviceRoute.DELETE(request(`/api/devices/${id}`, { method: "DELETE", headers }), params({ id }));
    expect(await outcome(await take)).toBe("401 not-signed-in");
  });

  test("a person's session gets no cards", async () => {
    expect(await outcome(await cardsRoute.GET(request("/api/devices/cards", { cookie })))).toBe("401 device-unknown");
    const sessionToken = cookie.split("=")[1] ?? "";
    expect(await outcome(await cards(sessionToken.slice(0, 40)))).toBe("401 device-unknown");
  });
});

describe("the manager's list", () => {
  test("says what waits, what is paired, when it was seen, and nothing secret", async () => {
    const first = await newDevice();
    const second = await newDevice("loft");
    const { token } = await (await pair(second.code)).json();
    h.advance(CODE_LIVES_MS);
    await cards(token);
    const list = await (await devicesRoute.GET(request("/api/devices", { cookie }))).json();
    const byId = new Map(list.map((d: { id: string }) => [d.id, d]));
    expect(byId.get(first.id)).toMatchObject({ state: "code-expired", pairedAt: null, roomName: "Room harbour" });
    expect(byId.get(second.id)).toMatchObject({ state: "paired", roomName: "Room loft" });
    expect(JSON.stringify(list)).not.toMatch(/hash/i);
  });

  test("only a manager adds devices, and only for a room that is there", async () => {
    for (const role of ["trainee", "coach", "lead", "crew"] as const) {
      const person = { kind: "person" as const, id: "p", roles: [role] };
      expect(addDevice(h.app, person, { name: "x", roomId: "harbour" })).toMatchObject({ ok: false });
    }
    const lost = request("/api/devices", { method: "POST", cookie, body: { name: "x", roomId: "cellar" } });
    expect(await outcome(await devicesRoute.POST(lost))).toBe("404 no-room");
  });
});
