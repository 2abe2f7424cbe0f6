/** The first run happens once, whoever is quickest, and nothing else makes an account. */

import { afterEach, beforeEach, expect, test } from "vitest";
import * as authRoute from "#app/api/auth/[...all]/route.ts";
import * as firstRunRoute from "#app/api/first-run/route.ts";
import { listMoveRows } from "#db/repos/move-repo.ts";
import { listMembers } from "#db/repos/people-repo.ts";
import { listStudioRooms } from "#db/repos/room-repo.ts";
import { readStudio } from "#db/repos/studio-repo.ts";
import { actorFromHeaders } from "#server/context/actor-from-headers.ts";
import { setSpringline } from "#server/context/springline.ts";
import { cookieOf, type Harness, outcome, PASSWORD, request, startHarness } from "./auth-harness.ts";

let h: Harness;
beforeEach(() => {
  h = startHarness();
});
afterEach(() => h.stop());

const firstRun = (change: object = {}) =>
  request("/api/first-run", {
    method: "POST",
    body: {
      studio: "Slipway Strength",
      town: "Port Ellery",
      name: "Ann",
      email: "Ann@Quay.example",
      password: PASSWORD,
      ...change,
    },
  });

test("makes the studio and a signed-in manager", async () => {
  const response = await firstRunRoute.POST(firstRun());
  expect(response.status).toBe(201);
  expect(readStudio(h.db)).toMatchObject({ name: "Slipway Strength", town: "Port Ellery", soleAuthorMaySign: false });
  const who = await actorFromHeaders(new Headers({ cookie: cookieOf(response) }));
  expect(who).toMatchObject({ name: "Ann", email: "ann@quay.example", actor: { kind: "person", roles: ["manager"] } });
});

test("a manager who teaches is a lead too and may sign alone", async () => {
  await firstRunRoute.POST(firstRun({ teaches: true }));
  expect(listMembers(h.db)[0]?.roles).toEqual(["lead", "manager"]);
  expect(readStudio(h.db)?.soleAuthorMaySign).toBe(true);
});

test("begins with moves and a room when asked, and with an empty studio when not", async () => {
  await firstRunRoute.POST(firstRun({ starter: true }));
  expect(listMoveRows(h.db).length).toBeGreaterThanOrEqual(40);
  expect(listStudioRooms(h.db).map((room) => room.name)).toEqual(["Room 1"]);
});

test("five first runs at once make one studio and one account", async () => {
  const tries = [1, 2, 3, 4, 5].map((n) => firstRunRoute.POST(firstRun({ email: `p${n}@quay.example` })));
  const outcomes = (await Promise.all((await Promise.all(tries)).map(outcome))).sort();
  expect(outcomes).toEqual(["201", ...Array(4).fill("409 studio-exists")]);
  expect(listMembers(h.db)).toHaveLength(1);
});

test("a second first run is refused", async () => {
  await firstRunRoute.POST(firstRun());
  expect(await outcome(await firstRunRoute.POST(firstRun()))).toBe("409 studio-exists");
});

test.each([
  ["a short password", { password: "too short" }, "422 invalid"],
  ["no address", { email: "ann" }, "422 invalid"],
  ["an unknown key", { role: "manager" }, "422 invalid"],
])("refuses %s and stays open", async (_what, change, expected) => {
  expect(await outcome(await firstRunRoute.POST(firstRun(change)))).toBe(expected);
  expect(readStudio(h.db)).toBeUndefined();
});

test("the library's own sign-up and organization endpoints are not there", async () => {
  const manager = cookieOf(await firstRunRoute.POST(firstRun()));
  const before = JSON.stringify(listMembers(h.db));
  const body = {
    name: "X",
    email: "x@quay.example",
    password: PASSWORD,
    organizationId: "studio",
    role: "manager",
    slug: "x",
  };
  const routes = { GET: authRoute.GET, POST: authRoute.POST };
  const doors = [
    ["POST", "/api/auth/sign-up/email"],
    ["POST", "/api/auth/organization/create"],
    ["POST", "/api/auth/organization/invite-member"],
    ["POST", "/api/auth/organization/accept-invitation"],
    ["POST", "/api/auth/organization/update-member-role"],
    ["POST", "/api/auth/organization/remove-member"],
    ["POST", "/api/auth/organization/leave"],
    ["POST", "/api/auth/organization/delete"],
    ["GET", "/api/auth/organization/list-members"],
    ["GET", "/api/auth/organization/get-full-organization"],
    ["POST", "/api/auth/update-user"],
    ["POST", "/api/auth/change-email"],
    ["POST", "/api/auth/delete-user"],
    ["GET", "/api/auth/list-sessions"],
    ["POST", "/api/auth/request-password-reset"],
    ["POST", "/api/auth/sign-in/social"],
    ["POST", "/api/auth/get-session"],
    ["GET", "/api/auth/sign-in/email/"],
    ["POST", "/api/auth//sign-up/email"],
    ["POST", "/api/auth/sign-up/email/"],
    ["POST", "/api/auth/sign-out/../sign-up/email"],
  ] as const;
  for (const [method, path] of doors) {
    const asking = request(path, { method, cookie: manager, ...(method === "POST" ? { body } : {}) });
    expect([path, await outcome(await routes[method](asking))]).toEqual([path, "404 not-found"]);
  }
  expect(JSON.stringify(listMembers(h.db))).toBe(before);
});

test("even asked from inside, the library makes no account by sign-up", async () => {
  const body = { name: "X", email: "x@quay.example", password: PASSWORD };
  await expect(h.app.auth.api.signUpEmail({ body })).rejects.toThrow();
  expect(listMembers(h.db)).toEqual([]);
});

test("where others can reach it, only who reads the console's code makes the studio", async () => {
  setSpringline({ ...h.app, setUpCode: "ABCD2345" });
  for (const code of [undefined, "", "ABCD2346", "abcd"])
    expect(await outcome(await firstRunRoute.POST(firstRun({ code })))).toBe("403 wrong-set-up-code");
  expect(listMembers(h.db)).toEqual([]);
  expect((await firstRunRoute.POST(firstRun({ code: "abcd-2345" }))).status).toBe(201);
});
