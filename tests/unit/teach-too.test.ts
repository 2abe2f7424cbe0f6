/** A manager who says that they teach, alone and among others. */
import { afterEach, beforeEach, expect, test } from "vitest";
import * as firstRunRoute from "#app/api/first-run/route.ts";
import * as teachRoute from "#app/api/people/teach/route.ts";
import { insertAccount } from "#db/repos/people-repo.ts";
import { listRecord } from "#db/repos/record-repo.ts";
import { readStudio } from "#db/repos/studio-repo.ts";
import { cookieOf, type Harness, PASSWORD, request, startHarness } from "./auth-harness.ts";

let h: Harness;
let manager = "";
beforeEach(async () => {
  h = startHarness();
  const body = { studio: "Slipway Strength", name: "Ann", email: "ann@quay.example", password: PASSWORD };
  manager = cookieOf(await firstRunRoute.POST(request("/api/first-run", { method: "POST", body })));
});
afterEach(() => {
  h.stop();
});

const teach = (cookie = manager) => teachRoute.POST(request("/api/people/teach", { method: "POST", body: {}, cookie }));
const kinds = () => listRecord(h.db, 0, 100).map(({ kind }) => kind);

test("alone, they become a lead as well and may sign off their own plans, once, on record", async () => {
  const answer = await teach();
  expect(answer.status).toBe(200);
  expect(await answer.json()).toEqual({ roles: ["lead", "manager"], signsAlone: true });
  expect(readStudio(h.db)?.soleAuthorMaySign).toBe(true);
  expect(h.refreshed()).toBe(1);
  await teach();
  expect(kinds().filter((kind) => kind === "roles" || kind === "sole-author")).toEqual(["roles", "sole-author"]);
});

test("where somebody else writes plans, the second pair of eyes stays", async () => {
  const at = h.app.now();
  insertAccount(h.db, { id: "bo", name: "Bo", email: "bo@quay.example", passwordHash: "x", roles: ["trainee"], at });
  expect(await (await teach()).json()).toEqual({ roles: ["lead", "manager"], signsAlone: false });
  expect(readStudio(h.db)?.soleAuthorMaySign).toBe(false);
});

test("nobody but a manager, and nothing but nothing is sent", async () => {
  expect((await teach("")).status).toBe(401);
  const odd = await teachRoute.POST(
    request("/api/people/teach", { method: "POST", body: { userId: "bo" }, cookie: manager }),
  );
  expect(odd.status).toBe(422);
});
