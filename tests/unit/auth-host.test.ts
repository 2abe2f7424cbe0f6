/** What a socket may do with a document: the policy's answers, asked of the database each time. */
import { afterEach, beforeEach, expect, test } from "vitest";
import * as firstRunRoute from "#app/api/first-run/route.ts";
import { setRoles } from "#db/repos/people-repo.ts";
import { insertPlan, setPlanDeleted, sharePlanRow, unsharePlanRow } from "#db/repos/plan-repo.ts";
import { endSessionsOf } from "#db/repos/session-repo.ts";
import type { Role } from "#lib/policy/can.ts";
import { createSyncHost } from "#server/main/sync-host.ts";
import type { SessionInfo, SyncHost } from "#server/sync/host.ts";
import { cookieOf, type Harness, PASSWORD, request, startHarness } from "./auth-harness.ts";

let h: Harness;
let host: SyncHost;
let ann: SessionInfo;

beforeEach(async () => {
  h = startHarness();
  host = createSyncHost(h.app);
  const body = { studio: "Slipway Strength", name: "Ann", email: "ann@quay.example", password: PASSWORD };
  const made = await firstRunRoute.POST(request("/api/first-run", { method: "POST", body }));
  const session = await host.authenticate(new Headers({ cookie: cookieOf(made) }));
  if (!session) throw new Error("not signed in");
  ann = session;
  insertPlan(h.db, { id: "p1", title: "", lengthSeconds: 1500, ownerId: "other", roomId: "r", team: false, at: 1 });
});
afterEach(() => h.stop());

const plan = () => host.accessTo({ kind: "plan", key: "p1" })(ann);
const month = (key: string) => host.accessTo({ kind: "month", key })(ann);
const be = (...roles: Role[]) => setRoles(h.db, ann.userId, roles);
const thisMonth = new Date().toISOString().slice(0, 7);

test("[INV-09] every change of role, sharing or session is in the next answer", () => {
  be("trainee");
  expect(plan()).toEqual({ exists: true, reads: false, writes: false, comments: false });
  sharePlanRow(h.db, "p1", ann.userId);
  expect(plan()).toEqual({ exists: true, reads: true, writes: true, comments: true });
  unsharePlanRow(h.db, "p1", ann.userId);
  expect(plan()?.reads).toBe(false);
  be("lead");
  expect(plan()).toEqual({ exists: true, reads: true, writes: false, comments: true });
  endSessionsOf(h.db, ann.userId);
  expect(plan()).toBeNull();
});

test("a deleted or unknown plan is not there, for a lead either", () => {
  be("lead");
  setPlanDeleted(h.db, "p1", 5);
  expect(plan()).toEqual({ exists: false, reads: false, writes: false, comments: false });
  expect(host.accessTo({ kind: "plan", key: "nothing" })(ann)?.exists).toBe(false);
});

test("the month is written by coaches and read by crew; far months are not there", () => {
  be("crew");
  expect(month(thisMonth)).toEqual({ exists: true, reads: true, writes: false, comments: false });
  be("coach");
  expect(month(thisMonth)?.writes).toBe(true);
  expect(month("1999-01")).toEqual({ exists: false, reads: false, writes: false, comments: false });
  be("trainee");
  expect(month(thisMonth)?.reads).toBe(false);
});

test("a session is no other person's, and no cookie is nobody", async () => {
  expect(host.accessTo({ kind: "plan", key: "p1" })({ ...ann, userId: "other" })).toBeNull();
  expect(await host.authenticate(new Headers())).toBeNull();
});
