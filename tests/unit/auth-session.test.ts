/** A session's end moves on with use, and only the answer that carries the new cookie moves it. */

import { afterEach, beforeEach, expect, test, vi } from "vitest";
import * as authRoute from "#app/api/auth/[...all]/route.ts";
import * as firstRunRoute from "#app/api/first-run/route.ts";
import * as roomsRoute from "#app/api/rooms/route.ts";
import { type SignedIn, sessionAccess } from "#server/auth/actor.ts";
import { actorFromHeaders } from "#server/context/actor-from-headers.ts";
import { cookieOf, type Harness, outcome, PASSWORD, request, startHarness } from "./auth-harness.ts";

const DAY = 24 * 60 * 60 * 1000;
let h: Harness;
let cookie: string;
let ann: SignedIn | null;

beforeEach(async () => {
  vi.useFakeTimers({ toFake: ["Date"], now: Date.UTC(2026, 2, 2, 9) });
  h = startHarness();
  const body = { studio: "Slipway Strength", name: "Ann", email: "ann@quay.example", password: PASSWORD };
  cookie = cookieOf(await firstRunRoute.POST(request("/api/first-run", { method: "POST", body })));
  ann = await actorFromHeaders({ cookie });
});
afterEach(() => {
  h.stop();
  vi.useRealTimers();
});

const end = () => sessionAccess(h.db, ann?.sessionId ?? "", Date.now())?.expiresAt;
const rooms = () => roomsRoute.GET(request("/api/rooms", { cookie }));

test("used within its first day a session keeps its end and sends no cookie", async () => {
  const before = end();
  vi.setSystemTime(Date.now() + DAY - 60_000);
  expect((await rooms()).headers.getSetCookie()).toEqual([]);
  expect(end()).toBe(before);
});

test("used after a day it lasts fourteen more, and the browser hears of it", async () => {
  const before = end() ?? 0;
  vi.setSystemTime(Date.now() + 3 * DAY);
  await actorFromHeaders({ cookie });
  expect(end()).toBe(before);
  const [renewed, known] = (await rooms()).headers.getSetCookie();
  expect(renewed).toContain("Max-Age=1209600");
  // The browser is remembered on with it, so that strangers' guesses never lock it out.
  expect(known).toMatch(/^springline\.known_browser=.+Max-Age=34560000/);
  expect(end()).toBe(before + 3 * DAY);
});

test("unused for fourteen days it is over, and the void cookie is taken back", async () => {
  vi.setSystemTime(Date.now() + 14 * DAY + 1);
  const refused = await rooms();
  expect(refused.headers.getSetCookie()[0]).toMatch(/^springline\.session_token=;.*Max-Age=0/);
  expect(await outcome(refused)).toBe("401 not-signed-in");
});

test("the page learns who is signed in, and never the token", async () => {
  const answer = await authRoute.GET(request("/api/auth/get-session", { cookie }));
  const text = await answer.text();
  expect(JSON.parse(text)).toEqual({
    user: { id: ann?.actor.id, name: "Ann", email: "ann@quay.example", roles: ["manager"] },
  });
  expect(await (await authRoute.GET(request("/api/auth/get-session"))).json()).toBeNull();
  const body = { email: "ann@quay.example", password: PASSWORD };
  const signedIn = await authRoute.POST(request("/api/auth/sign-in/email", { method: "POST", body }));
  expect(cookieOf(signedIn)).toContain("springline.session_token=");
  expect(await signedIn.text()).toBe("null");
});

test("a new password lets in and the old one does not; a wrong present one changes nothing", async () => {
  const change = (currentPassword: string) =>
    authRoute.POST(
      request("/api/auth/change-password", {
        method: "POST",
        cookie,
        body: { currentPassword, newPassword: "another long password" },
      }),
    );
  const signIn = async (password: string) =>
    (
      await authRoute.POST(
        request("/api/auth/sign-in/email", { method: "POST", body: { email: "ann@quay.example", password } }),
      )
    ).status;
  expect(await outcome(await change("not the password"))).toBe("400 invalid-password");
  expect(await actorFromHeaders({ cookie })).not.toBeNull();
  expect((await change(PASSWORD)).status).toBe(200);
  expect(await signIn("another long password")).toBe(200);
  expect(await signIn(PASSWORD)).toBe(401);
  expect(await actorFromHeaders({ cookie })).toBeNull();
});

test("with a new password every other session ends, whatever the page asks for; this one goes on under a new token", async () => {
  const body = { email: "ann@quay.example", password: PASSWORD };
  const elsewhere = cookieOf(await authRoute.POST(request("/api/auth/sign-in/email", { method: "POST", body })));
  expect(await actorFromHeaders({ cookie: elsewhere })).not.toBeNull();
  const before = h.refreshed();
  const asked = { currentPassword: PASSWORD, newPassword: "another long password", revokeOtherSessions: false };
  const answer = await authRoute.POST(request("/api/auth/change-password", { method: "POST", cookie, body: asked }));
  expect(await outcome(answer.clone())).toBe("200");
  for (const old of [cookie, elsewhere]) expect(await actorFromHeaders({ cookie: old })).toBeNull();
  expect((await actorFromHeaders({ cookie: cookieOf(answer) }))?.email).toBe("ann@quay.example");
  expect(h.refreshed()).toBeGreaterThan(before);
  expect(await answer.text()).toBe("null");
});
