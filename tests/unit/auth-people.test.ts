/** What a manager does about people, and that it counts at once. Library and database are the real ones. */

import { afterEach, beforeEach, expect, test } from "vitest";
import * as authRoute from "#app/api/auth/[...all]/route.ts";
import * as firstRunRoute from "#app/api/first-run/route.ts";
import * as endSessionsRoute from "#app/api/people/[userId]/end-sessions/route.ts";
import * as personRoute from "#app/api/people/[userId]/route.ts";
import * as peopleRoute from "#app/api/people/route.ts";
import { namesById } from "#db/repos/people-repo.ts";
import type { Role } from "#lib/policy/can.ts";
import { type SignedIn, sessionAccess } from "#server/auth/actor.ts";
import { actorFromHeaders } from "#server/context/actor-from-headers.ts";
import { invite } from "#server/people/invite.ts";
import { join } from "#server/people/join.ts";
import { cookieOf, type Harness, outcome, PASSWORD, params, request, startHarness } from "./auth-harness.ts";

let h: Harness;
let manager: string;
let ann: SignedIn;

beforeEach(async () => {
  h = startHarness();
  const body = { studio: "Slipway Strength", name: "Ann", email: "ann@quay.example", password: PASSWORD };
  manager = cookieOf(await firstRunRoute.POST(request("/api/first-run", { method: "POST", body })));
  ann = await who(manager);
});
afterEach(() => {
  h.stop();
});

async function who(cookie: string): Promise<SignedIn> {
  const found = await actorFromHeaders({ cookie });
  if (!found) throw new Error("not signed in");
  return found;
}

async function add(name: string, roles: Role[]): Promise<SignedIn> {
  const email = `${name.toLowerCase()}@quay.example`;
  const invited = invite(h.app, ann.actor, { email, roles });
  if (!invited.ok) throw new Error(invited.error.message);
  await join(h.app, invited.value.id, { name, password: PASSWORD });
  return who(cookieOf(await signIn(email)));
}

const signIn = (email: string, password = PASSWORD, headers = {}) =>
  authRoute.POST(request("/api/auth/sign-in/email", { method: "POST", body: { email, password }, headers }));
const patch = (id: string, roles: Role[], cookie = manager) =>
  personRoute.PATCH(request(`/api/people/${id}`, { method: "PATCH", body: { roles }, cookie }), params({ userId: id }));
const remove = (id: string, cookie = manager) =>
  personRoute.DELETE(request(`/api/people/${id}`, { method: "DELETE", cookie }), params({ userId: id }));
const endSessions = (id: string, cookie = manager) =>
  endSessionsRoute.POST(request(`/api/people/${id}/end-sessions`, { method: "POST", cookie }), params({ userId: id }));
const access = (person: SignedIn) => sessionAccess(h.db, person.sessionId, h.app.now());

test("[INV-09] a changed role is what the session may do at once, and open sockets are asked again", async () => {
  const bo = await add("Bo", ["trainee"]);
  expect(access(bo)?.roles).toEqual(["trainee"]);
  const before = h.refreshed();
  expect((await patch(bo.actor.id, ["coach", "lead"])).status).toBe(200);
  expect(access(bo)?.roles).toEqual(["coach", "lead"]);
  expect(h.refreshed()).toBe(before + 1);
});

test("[INV-09] ended sessions open nothing at once; signing in again does", async () => {
  const bo = await add("Bo", ["coach"]);
  const before = h.refreshed();
  expect(await (await endSessions(bo.actor.id)).json()).toEqual({ ended: 1 });
  expect(access(bo)).toBeNull();
  expect(h.refreshed()).toBe(before + 1);
  expect((await signIn("bo@quay.example")).status).toBe(200);
});

test("signing out ends the session of that cookie only", async () => {
  const first = cookieOf(await signIn("ann@quay.example"));
  const session = await who(first);
  const out = await authRoute.POST(request("/api/auth/sign-out", { method: "POST", body: {}, cookie: first }));
  expect(out.status).toBe(200);
  expect(access(session)).toBeNull();
  expect(access(ann)).not.toBeNull();
});

test("a session ends after fourteen days without use", async () => {
  const days = 24 * 60 * 60 * 1000;
  h.advance(14 * days - 60_000);
  expect(access(ann)?.roles).toEqual(["manager"]);
  h.advance(60_000);
  expect(access(ann)).toBeNull();
  expect(await actorFromHeaders({ cookie: manager })).toBeNull();
});

test("the last manager can neither lose the role nor leave; with a second one both work", async () => {
  expect(await outcome(await patch(ann.actor.id, ["lead"]))).toBe("409 last-manager");
  expect(await outcome(await remove(ann.actor.id))).toBe("409 last-manager");
  expect((await patch(ann.actor.id, ["lead", "manager"])).status).toBe(200);
  const bo = await add("Bo", ["manager"]);
  expect((await patch(ann.actor.id, ["lead"])).status).toBe(200);
  expect(await outcome(await patch(bo.actor.id, ["coach"], cookieOf(await signIn("bo@quay.example"))))).toBe(
    "409 last-manager",
  );
});

test("somebody taken out cannot sign in; their name stays, and they may come back as themselves", async () => {
  const bo = await add("Bo", ["coach"]);
  expect((await remove(bo.actor.id)).status).toBe(200);
  expect(access(bo)).toBeNull();
  expect(await outcome(await signIn("bo@quay.example"))).toBe("401 invalid-email-or-password");
  expect(namesById(h.db).get(bo.actor.id)).toBe("Bo");
  expect(await outcome(await remove(bo.actor.id))).toBe("404 not-found");
  const back = await add("Bo", ["trainee"]);
  expect(back.actor).toEqual({ kind: "person", id: bo.actor.id, roles: ["trainee"] });
});

test("links made by somebody who is taken out stop working", async () => {
  const bo = await add("Bo", ["manager"]);
  const link = invite(h.app, bo.actor, { email: "eve@quay.example", roles: ["manager"] });
  await remove(bo.actor.id);
  const joined = await join(h.app, link.ok ? link.value.id : "", { name: "Eve", password: PASSWORD });
  expect(joined).toMatchObject({ ok: false, error: { code: "invitation-revoked" } });
});

test("only a manager manages; anybody signed in sees names and may end their own sessions", async () => {
  const bo = await add("Bo", ["lead"]);
  const cookie = cookieOf(await signIn("bo@quay.example"));
  expect(await outcome(await patch(bo.actor.id, ["manager"], cookie))).toBe("403 no-right");
  expect(await outcome(await remove(ann.actor.id, cookie))).toBe("403 no-right");
  expect(await outcome(await endSessions(ann.actor.id, cookie))).toBe("403 no-right");
  expect(await outcome(await peopleRoute.GET(request("/api/people", { cookie })))).toBe("403 no-right");
  const names = await (await peopleRoute.GET(request("/api/people?names=1", { cookie }))).json();
  expect(names.map((person: object) => Object.keys(person))).toEqual([
    ["id", "name", "roles"],
    ["id", "name", "roles"],
  ]);
  expect((await endSessions(bo.actor.id, cookie)).status).toBe(200);
});

test.each([
  ["another origin", { origin: "http://evil.example" }, "403 other-origin"],
  ["the other loopback name", { origin: "http://127.0.0.1:4310" }, "403 other-origin"],
  ["a form's content type", { "content-type": "text/plain" }, "415 not-json-type"],
])("a change that comes with %s is refused", async (_what, headers, expected) => {
  const asking = request(`/api/people/${ann.actor.id}`, {
    method: "PATCH",
    body: { roles: ["manager", "lead"] },
    cookie: manager,
    headers,
  });
  expect(await outcome(await personRoute.PATCH(asking, params({ userId: ann.actor.id })))).toBe(expected);
  expect(access(ann)?.roles).toEqual(["manager"]);
});

test("the cookie is kept from scripts and other sites; over https it is secure", async () => {
  const [plain] = (await signIn("ann@quay.example")).headers.getSetCookie();
  expect(plain).toMatch(/^springline\.session_token=.+Max-Age=1209600; Path=\/; HttpOnly; SameSite=Lax$/);
  h.stop();
  h = startHarness({ origin: "https://plans.quay.example" });
  const body = { studio: "Slipway Strength", name: "Ann", email: "ann@quay.example", password: PASSWORD };
  const headers = { origin: "https://plans.quay.example" };
  const made = await firstRunRoute.POST(request("/api/first-run", { method: "POST", body, headers }));
  expect(made.headers.getSetCookie()[0]).toMatch(
    /^__Secure-springline\.session_token=.+; HttpOnly; Secure; SameSite=Lax$/,
  );
});

test("a cookie with one letter changed, or none at all, is nobody", async () => {
  const [name = "", value = ""] = manager.split("=");
  const forged = `${name}=${value.startsWith("a") ? "b" : "a"}${value.slice(1)}`;
  expect(await actorFromHeaders({ cookie: forged })).toBeNull();
  expect(await actorFromHeaders({})).toBeNull();
});
