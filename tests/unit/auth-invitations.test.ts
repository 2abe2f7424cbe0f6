/** An invitation lets one person in, once, in time, under one address. */

import { afterEach, beforeEach, expect, test } from "vitest";
import * as firstRunRoute from "#app/api/first-run/route.ts";
import * as joinRoute from "#app/api/join/[invitationId]/route.ts";
import * as invitationRoute from "#app/api/people/invitations/[invitationId]/route.ts";
import * as invitationsRoute from "#app/api/people/invitations/route.ts";
import { listMembers } from "#db/repos/people-repo.ts";
import { readStudio } from "#db/repos/studio-repo.ts";
import { actorFromHeaders } from "#server/context/actor-from-headers.ts";
import { listInvitations } from "#server/people/invite.ts";
import { cookieOf, type Harness, ORIGIN, outcome, PASSWORD, params, request, startHarness } from "./auth-harness.ts";

const DAY = 24 * 60 * 60 * 1000;
let h: Harness;
let manager: string;

beforeEach(async () => {
  h = startHarness();
  const body = {
    studio: "Slipway Strength",
    name: "Ann",
    email: "ann@quay.example",
    password: PASSWORD,
    teaches: true,
  };
  manager = cookieOf(await firstRunRoute.POST(request("/api/first-run", { method: "POST", body })));
});
afterEach(() => h.stop());

const invite = (body: object, cookie = manager) =>
  invitationsRoute.POST(request("/api/people/invitations", { method: "POST", body, cookie }));

async function linkFor(body: object): Promise<string> {
  const { link } = await (await invite(body)).json();
  return link;
}

const idOf = (link: string) => link.slice(`${ORIGIN}/join/`.length);
const join = (link: string, body: object = { name: "Bo", password: PASSWORD }) =>
  joinRoute.POST(request(`/api/join/${idOf(link)}`, { method: "POST", body }), params({ invitationId: idOf(link) }));
const look = (link: string) => joinRoute.GET(request(`/api/join/${idOf(link)}`), params({ invitationId: idOf(link) }));

test("a link lets the invited person in, signed in, with the roles it names", async () => {
  const link = await linkFor({ email: "Bo@Quay.example", name: "Bo", roles: ["crew", "coach"] });
  expect(link).toMatch(new RegExp(`^${ORIGIN}/join/[\\w-]{32}$`));
  expect(await (await look(link)).json()).toEqual({
    studio: "Slipway Strength",
    email: "bo@quay.example",
    name: "Bo",
    roles: ["coach", "crew"],
  });
  const response = await join(link);
  expect(response.status).toBe(201);
  const who = await actorFromHeaders({ cookie: cookieOf(response) });
  expect(who).toMatchObject({ email: "bo@quay.example", actor: { roles: ["coach", "crew"] } });
});

test("a link works once, even when opened three times at once", async () => {
  const link = await linkFor({ email: "bo@quay.example", roles: ["coach"] });
  const outcomes = await Promise.all((await Promise.all([join(link), join(link), join(link)])).map(outcome));
  expect(outcomes.sort()).toEqual(["201", "410 invitation-used", "410 invitation-used"]);
  expect(await outcome(await look(link))).toBe("410 invitation-used");
  expect(listMembers(h.db)).toHaveLength(2);
});

test("a link works until its fourteenth day and not after", async () => {
  const link = await linkFor({ email: "bo@quay.example", roles: ["coach"] });
  h.advance(14 * DAY - 60_000);
  expect((await look(link)).status).toBe(200);
  h.advance(60_000);
  expect(await outcome(await join(link))).toBe("410 invitation-expired");
  const list = listInvitations(h.app, { kind: "person", id: "ann", roles: ["manager"] });
  expect(list.ok && list.value.map((one) => [one.email, one.expired])).toEqual([["bo@quay.example", true]]);
});

test("a link that was taken back, or replaced by a newer one, lets nobody in", async () => {
  const first = await linkFor({ email: "bo@quay.example", roles: ["manager"] });
  const second = await linkFor({ email: "bo@quay.example", roles: ["coach"] });
  expect(await outcome(await join(first))).toBe("410 invitation-revoked");
  const id = idOf(second);
  const revoke = () =>
    invitationRoute.DELETE(
      request(`/api/people/invitations/${id}`, { method: "DELETE", cookie: manager }),
      params({ invitationId: id }),
    );
  expect((await revoke()).status).toBe(200);
  expect(await outcome(await revoke())).toBe("404 not-found");
  expect(await outcome(await join(second))).toBe("410 invitation-revoked");
});

test("the address and the roles are the invitation's: a body that brings others is refused", async () => {
  const link = await linkFor({ email: "bo@quay.example", roles: ["coach"] });
  for (const extra of [{ email: "eve@quay.example" }, { roles: ["manager"] }, { role: "manager" }]) {
    expect(await outcome(await join(link, { name: "Eve", password: PASSWORD, ...extra }))).toBe("422 invalid");
  }
  expect(listMembers(h.db)).toHaveLength(1);
  expect((await join(link)).status).toBe(201);
});

test("an unknown link is refused, and only a manager invites, for addresses not here yet", async () => {
  expect(await outcome(await join(`${ORIGIN}/join/${"x".repeat(32)}`))).toBe("404 invitation-unknown");
  expect(await outcome(await invite({ email: "ann@quay.example", roles: ["coach"] }))).toBe("409 already-here");
  expect(await outcome(await invite({ email: "bo@quay.example", roles: [] }))).toBe("422 invalid");
  expect(await outcome(await invite({ email: "bo@quay.example", roles: ["owner"] }))).toBe("422 invalid");
  expect(await outcome(await invite({ email: "bo@quay.example", roles: ["coach"] }, ""))).toBe("401 not-signed-in");
  const coach = cookieOf(await join(await linkFor({ email: "bo@quay.example", roles: ["coach", "lead"] })));
  expect(await outcome(await invite({ email: "eve@quay.example", roles: ["coach"] }, coach))).toBe("403 no-right");
});

test("signing alone ends when a second person joins who writes plans", async () => {
  await join(await linkFor({ email: "sam@quay.example", roles: ["crew"] }));
  expect(readStudio(h.db)?.soleAuthorMaySign).toBe(true);
  await join(await linkFor({ email: "bo@quay.example", roles: ["trainee"] }), { name: "Cy", password: PASSWORD });
  expect(readStudio(h.db)?.soleAuthorMaySign).toBe(false);
});
