/** What a manager hands out ends with their right to hand it out: invitations, reset links, pairing codes. Over raw requests. */

import { afterEach, beforeEach, expect, test } from "vitest";
import * as authRoute from "#app/api/auth/[...all]/route.ts";
import * as pairRoute from "#app/api/devices/pair/route.ts";
import * as devicesRoute from "#app/api/devices/route.ts";
import * as firstRunRoute from "#app/api/first-run/route.ts";
import * as joinRoute from "#app/api/join/[invitationId]/route.ts";
import * as resetLinkRoute from "#app/api/people/[userId]/reset-link/route.ts";
import * as personRoute from "#app/api/people/[userId]/route.ts";
import * as invitationsRoute from "#app/api/people/invitations/route.ts";
import * as resetRoute from "#app/api/reset/[token]/route.ts";
import { insertAccount } from "#db/repos/people-repo.ts";
import { insertRoom } from "#db/repos/room-repo.ts";
import type { Role } from "#lib/policy/can.ts";
import { actorFromHeaders } from "#server/context/actor-from-headers.ts";
import { addDevice } from "#server/devices/manage-devices.ts";
import { invite } from "#server/people/invite.ts";
import { makeResetLink } from "#server/people/reset-password.ts";
import { cookieOf, type Harness, ORIGIN, outcome, PASSWORD, params, request, startHarness } from "./auth-harness.ts";
import { samplePlan } from "./card/sample-plan.ts";

let h: Harness;
let ann: Who;
let bo: Who;
let cleo: Who;
interface Who {
  readonly id: string;
  readonly cookie: string;
}

beforeEach(async () => {
  h = startHarness();
  const body = { studio: "Slipway Strength", name: "Ann", email: "ann@quay.example", password: PASSWORD };
  ann = await whoHas(cookieOf(await firstRunRoute.POST(request("/x", { method: "POST", body }))));
  insertRoom(h.db, { id: "harbour", name: "Harbour room", equipment: samplePlan().equipment });
  bo = await add("bo", ["manager"]);
  cleo = await add("cleo", ["lead", "coach"]);
});
afterEach(() => h.stop());

async function whoHas(cookie: string): Promise<Who> {
  const found = await actorFromHeaders({ cookie });
  if (!found) throw new Error("not signed in");
  return { id: found.actor.id, cookie };
}

const send = (body: unknown, cookie = "", method = "POST") => request("/x", { method, body, cookie });
const bad = { name: "Eve", password: "a stranger's password" };
const openInvitation = (id: string) => joinRoute.POST(send(bad), params({ invitationId: id }));
const openReset = (token: string) => resetRoute.POST(send({ password: bad.password }), params({ token }));
const openCode = (code: string) => pairRoute.POST(send({ code }));
const last = (link: string) => link.split("/").at(-1) ?? "";

/** With Ann's own password, since hashing one takes a while. */
async function add(name: string, roles: Role[]): Promise<Who> {
  const made = { id: name, name, email: `${name}@quay.example`, passwordHash: passwordOf(ann.id), roles };
  insertAccount(h.db, { ...made, at: h.app.now() });
  if (!roles.includes("manager")) return { id: name, cookie: "" };
  const body = { email: made.email, password: PASSWORD };
  return whoHas(cookieOf(await authRoute.POST(request("/api/auth/sign-in/email", { method: "POST", body }))));
}
const passwordOf = (id: string) =>
  h.db.raw.prepare<[string], string>("SELECT password FROM account WHERE user_id = ?").pluck().get(id) ?? "";

/** One of each, made by Bo: a manager's invitation, a reset link for the lead, a code. */
async function handOut() {
  const invited = await invitationsRoute.POST(send({ email: "eve@quay.example", roles: ["manager"] }, bo.cookie));
  const reset = await resetLinkRoute.POST(send({}, bo.cookie), params({ userId: cleo.id }));
  const device = await devicesRoute.POST(send({ name: "Tablet", roomId: "harbour" }, bo.cookie));
  const [invitation, link, code] = [await invited.json(), await reset.json(), await device.json()];
  return { invitation: last(invitation.link), token: last(link.link), code: String(code.code) };
}
const setRoles = (who: Who, roles: Role[], by = ann) =>
  personRoute.PATCH(send({ roles }, by.cookie, "PATCH"), params({ userId: who.id }));
const remove = (who: Who) => personRoute.DELETE(send(undefined, ann.cookie, "DELETE"), params({ userId: who.id }));

async function nothingOpens(made: Awaited<ReturnType<typeof handOut>>): Promise<void> {
  expect(await outcome(await openInvitation(made.invitation))).toBe("410 invitation-revoked");
  expect(await outcome(await openReset(made.token))).toBe("410 reset-withdrawn");
  expect(await outcome(await openCode(made.code))).toBe("404 code-unknown");
  expect(passwordOf(cleo.id)).toBe(passwordOf(ann.id));
}
const record = () =>
  h.db.raw
    .prepare("SELECT actor_id AS by, subject, data_json AS data FROM studio_event WHERE kind = 'links-ended'")
    .all();

test.each([
  ["taken out", () => remove(bo)],
  ["no manager any more", () => setRoles(bo, ["coach"])],
])("somebody %s: what they made and nobody used opens nothing, and the record says so", async (_what, act) => {
  const made = await handOut();
  expect((await act()).status).toBe(200);
  await nothingOpens(made);
  expect(record()).toEqual([
    { by: ann.id, subject: bo.id, data: JSON.stringify({ invitations: 1, resets: 1, codes: 1, feeds: 0 }) },
  ]);
});

test("a manager again: new links work, the old ones stay ended", async () => {
  const made = await handOut();
  await setRoles(bo, ["coach"]);
  expect((await setRoles(bo, ["coach", "manager"])).status).toBe(200);
  await nothingOpens(made);
  const again = await handOut();
  expect((await openReset(again.token)).status).toBe(200);
  expect((await openInvitation(again.invitation)).status).toBe(201);
  expect((await openCode(again.code)).status).toBe(200);
});

test("other roles change: what a manager made goes on, and nothing is recorded", async () => {
  const made = await handOut();
  expect((await setRoles(bo, ["manager", "lead"])).status).toBe(200);
  expect((await openReset(made.token)).status).toBe(200);
  expect((await openInvitation(made.invitation)).status).toBe(201);
  expect((await openCode(made.code)).status).toBe(200);
  expect(record()).toEqual([]);
});

test("the maker is asked about again as a link is used: one made in the last moment before opens nothing", async () => {
  await setRoles(bo, ["coach"]);
  // A request that was let in while Bo was a manager, and acts after.
  const before = { kind: "person", id: bo.id, roles: ["manager"] } as const;
  const invited = invite(h.app, before, { email: "eve@quay.example", roles: ["manager"] });
  const reset = makeResetLink(h.app, before, cleo.id);
  const device = addDevice(h.app, before, { name: "Tablet", roomId: "harbour" });
  if (!invited.ok || !reset.ok || !device.ok) throw new Error("made");
  const answers = [
    await openInvitation(invited.value.id),
    await joinRoute.GET(request("/x"), params({ invitationId: invited.value.id })),
    await openReset(last(reset.value.link)),
    await resetRoute.GET(request("/x"), params({ token: last(reset.value.link) })),
    await openCode(device.value.code),
  ];
  for (const answer of answers) {
    expect(answer.status).toBe(410);
    expect((await answer.json()).error.message).toMatch(/no longer .*\. Ask (a|the) manager for a new one\.$/);
  }
});

test("a request whose body is still coming as its sender loses the role does not give the role back", async () => {
  let finish = (): void => undefined;
  const body = new ReadableStream<Uint8Array>({
    start(controller) {
      finish = () => {
        controller.enqueue(new TextEncoder().encode(JSON.stringify({ roles: ["manager"] })));
        controller.close();
      };
    },
  });
  const headers = { origin: ORIGIN, "content-type": "application/json", cookie: bo.cookie };
  const init: RequestInit & { duplex: "half" } = { method: "PATCH", headers, body, duplex: "half" };
  const slow = personRoute.PATCH(new Request(`${ORIGIN}/x`, init), params({ userId: bo.id }));
  expect((await setRoles(bo, ["coach"])).status).toBe(200);
  finish();
  expect(await outcome(await slow)).toBe("403 no-right");
});

test("in the same second a link is used and its maker is taken out: both in one order, never half", async () => {
  const made = await handOut();
  const [used, removed] = await Promise.all([openReset(made.token), remove(bo)]);
  expect(removed.status).toBe(200);
  const said = await outcome(used);
  expect(["200", "410 reset-withdrawn"]).toContain(said);
  expect(passwordOf(cleo.id) === passwordOf(ann.id)).toBe(said !== "200");
});
