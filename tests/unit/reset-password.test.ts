/** Reset links over raw requests: one use, a day, only a manager's, and what one ends. Library and database are the real ones. */

import { afterEach, beforeEach, expect, test } from "vitest";
import * as authRoute from "#app/api/auth/[...all]/route.ts";
import * as firstRunRoute from "#app/api/first-run/route.ts";
import * as resetLinkRoute from "#app/api/people/[userId]/reset-link/route.ts";
import * as withdrawRoute from "#app/api/people/reset-links/[id]/route.ts";
import * as resetLinksRoute from "#app/api/people/reset-links/route.ts";
import * as resetRoute from "#app/api/reset/[token]/route.ts";
import { setRoles } from "#db/repos/people-repo.ts";
import type { Role } from "#lib/policy/can.ts";
import type { SignedIn } from "#server/auth/actor.ts";
import { actorFromHeaders } from "#server/context/actor-from-headers.ts";
import { invite } from "#server/people/invite.ts";
import { join } from "#server/people/join.ts";
import { removePerson } from "#server/people/manage-people.ts";
import { RESET_MS } from "#server/people/reset-password.ts";
import { cookieOf, type Harness, outcome, PASSWORD, params, request, startHarness } from "./auth-harness.ts";

const NEW = "quite another password";
let h: Harness;
let manager: string;
let ann: SignedIn;

beforeEach(async () => {
  h = startHarness();
  const body = { studio: "Slipway Strength", name: "Ann", email: "ann@quay.example", password: PASSWORD };
  manager = cookieOf(await firstRunRoute.POST(request("/api/first-run", { method: "POST", body })));
  ann = await who(manager);
});
afterEach(() => h.stop());

async function who(cookie: string): Promise<SignedIn> {
  const found = await actorFromHeaders({ cookie });
  if (!found) throw new Error("not signed in");
  return found;
}

async function add(name: string, roles: Role[]): Promise<string> {
  const invited = invite(h.app, ann.actor, { email: `${name}@quay.example`, roles });
  if (!invited.ok) throw new Error(invited.error.message);
  await join(h.app, invited.value.id, { name, password: PASSWORD });
  return cookieOf(await signIn(name, PASSWORD));
}

const signIn = (name: string, password: string) => {
  const body = { email: `${name}@quay.example`, password };
  return authRoute.POST(request("/api/auth/sign-in/email", { method: "POST", body }));
};
const ask = (userId: string, cookie = manager) =>
  resetLinkRoute.POST(request("/x", { method: "POST", body: {}, cookie }), params({ userId }));
const reset = (token: string, body: object = { password: NEW }) =>
  resetRoute.POST(request("/x", { method: "POST", body }), params({ token }));

async function link(userId: string): Promise<string> {
  const made = await (await ask(userId)).json();
  return String(made.link).split("/").at(-1) ?? "";
}

test("a link sets the password once, ends the old sessions and is on record; the maker learns nothing", async () => {
  const cookie = await add("ben", ["coach"]);
  const { id } = (await who(cookie)).actor;
  const token = await link(id);
  const stored = JSON.stringify(h.db.raw.prepare("SELECT * FROM verification").all());
  expect(stored).not.toContain(token);
  const done = await reset(token);
  expect(done.status).toBe(200);
  expect((await who(cookieOf(done))).actor.id).toBe(id);
  expect(await actorFromHeaders({ cookie })).toBeNull();
  expect(h.refreshed()).toBeGreaterThan(0);
  expect((await signIn("ben", PASSWORD)).status).toBe(401);
  expect((await signIn("ben", NEW)).status).toBe(200);
  expect(await outcome(await reset(token))).toBe("410 reset-used");
  const record = h.db.raw.prepare("SELECT kind, actor_id AS by, subject FROM studio_event ORDER BY id").all();
  expect(record).toEqual([
    { kind: "reset-link", by: ann.actor.id, subject: id },
    { kind: "password-reset", by: id, subject: id },
  ]);
  expect(JSON.stringify(h.db.raw.prepare("SELECT * FROM studio_event").all())).not.toContain(token);
});

test("two who open one link in the same second: one password is set", async () => {
  const { id } = (await who(await add("ben", ["coach"]))).actor;
  const token = await link(id);
  const both = await Promise.all([reset(token), reset(token, { password: "a third long password" })]);
  expect((await Promise.all(both.map(outcome))).sort()).toEqual(["200", "410 reset-used"]);
});

test("a forged, replaced or expired link, a bad password, or more than a password is refused", async () => {
  const cookie = await add("ben", ["coach"]);
  const { id } = (await who(cookie)).actor;
  const first = await link(id);
  const second = await link(id);
  expect(await outcome(await reset(first))).toBe("404 reset-unknown");
  expect(await outcome(await reset(`${second.slice(0, -1)}${second.endsWith("A") ? "B" : "A"}`))).toBe(
    "404 reset-unknown",
  );
  expect(await outcome(await reset("%"))).toBe("404 reset-unknown");
  expect(await outcome(await reset(second, { password: "short" }))).toBe("422 invalid");
  expect(await outcome(await reset(second, { password: NEW, userId: ann.actor.id }))).toBe("422 invalid");
  h.advance(RESET_MS);
  expect(await outcome(await reset(second))).toBe("410 reset-expired");
  expect((await signIn("ben", PASSWORD)).status).toBe(200);
});

test("only a manager makes one, for another manager too, never for themselves; it goes with its person", async () => {
  const coach = await add("ben", ["coach", "lead"]);
  const { id } = (await who(coach)).actor;
  expect(await outcome(await ask(ann.actor.id, coach))).toBe("403 no-right");
  expect(await outcome(await ask(id, ""))).toBe("401 not-signed-in");
  expect(await outcome(await ask(ann.actor.id))).toBe("409 own-password");
  expect(await outcome(await ask("nobody"))).toBe("404 not-found");
  const other = await who(await add("cleo", ["manager"]));
  expect((await ask(other.actor.id)).status).toBe(201);
  const token = await link(id);
  removePerson(h.app, ann.actor, id);
  expect(await outcome(await reset(token))).toBe("404 reset-unknown");
});

const openLinks = (cookie = manager) => resetLinksRoute.GET(request("/x", { cookie }));
const withdraw = (id: string, cookie = manager) =>
  withdrawRoute.DELETE(request("/x", { method: "DELETE", cookie }), params({ id }));

test("managers see open links without the links themselves, and withdraw one; on record, and it opens nothing", async () => {
  const { id } = (await who(await add("ben", ["coach"]))).actor;
  const token = await link(id);
  const expiresAt = h.db.raw.prepare("SELECT expires_at FROM verification").pluck().get();
  const shown = await (await openLinks()).json();
  expect(shown).toEqual([
    { id: shown[0].id, forName: "ben", forEmail: "ben@quay.example", byName: "Ann", byMail: false, expiresAt },
  ]);
  expect(JSON.stringify(shown)).not.toContain(token);
  // Two managers at once: one withdraws it, the other is told that it is not there any more.
  const both = await Promise.all([withdraw(shown[0].id), withdraw(shown[0].id)]);
  expect((await Promise.all(both.map(outcome))).sort()).toEqual(["200", "404 not-found"]);
  expect(await outcome(await reset(token))).toBe("410 reset-withdrawn");
  expect(await (await openLinks()).json()).toEqual([]);
  const record = h.db.raw.prepare(
    "SELECT actor_id AS by, subject FROM studio_event WHERE kind = 'reset-link-withdrawn'",
  );
  expect(record.all()).toEqual([{ by: ann.actor.id, subject: id }]);
});

test("a used link and one that ran out are not open", async () => {
  const { id } = (await who(await add("ben", ["coach"]))).actor;
  await reset(await link(id));
  await link(id);
  h.advance(RESET_MS);
  expect(await (await openLinks()).json()).toEqual([]);
});

test("nobody but a manager sees or withdraws one", async () => {
  const roles: Role[][] = [["lead"], ["coach"], ["trainee"], ["crew"]];
  const person = await add("ben", ["coach"]);
  const { id } = (await who(person)).actor;
  const token = await link(id);
  const [open] = await (await openLinks()).json();
  for (const list of roles) {
    setRoles(h.db, id, list);
    expect([await outcome(await openLinks(person)), await outcome(await withdraw(open.id, person))]).toEqual([
      "403 no-right",
      "403 no-right",
    ]);
  }
  expect(await outcome(await openLinks(""))).toBe("401 not-signed-in");
  expect(await outcome(await withdraw(open.id, ""))).toBe("401 not-signed-in");
  expect((await resetRoute.GET(request("/x"), params({ token }))).status).toBe(200);
});
