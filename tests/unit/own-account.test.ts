/** One's own name and address: what is asked, what is refused, what stands in the record. Library and database are the real ones. */
import { afterEach, beforeEach, expect, test } from "vitest";
import * as authRoute from "#app/api/auth/[...all]/route.ts";
import * as firstRunRoute from "#app/api/first-run/route.ts";
import * as emailRoute from "#app/api/me/email/route.ts";
import * as nameRoute from "#app/api/me/name/route.ts";
import { insertAccount, namesById } from "#db/repos/people-repo.ts";
import { listRecord } from "#db/repos/record-repo.ts";
import { cookieOf, type Harness, PASSWORD, request, startHarness } from "./auth-harness.ts";

let h: Harness;
let ann = "";
beforeEach(async () => {
  h = startHarness();
  const body = { studio: "Slipway Strength", name: "Ann", email: "ann@quay.example", password: PASSWORD };
  ann = cookieOf(await firstRunRoute.POST(request("/api/first-run", { method: "POST", body })));
  const at = h.app.now();
  insertAccount(h.db, { id: "bo", name: "Bo", email: "bo@quay.example", passwordHash: "x", roles: ["coach"], at });
});
afterEach(() => {
  h.stop();
});

const rename = (name: string, cookie = ann) =>
  nameRoute.PUT(request("/api/me/name", { method: "PUT", body: { name }, cookie }));
const move = (email: string, password = PASSWORD, cookie = ann) =>
  emailRoute.PUT(request("/api/me/email", { method: "PUT", body: { email, password }, cookie }));
const signIn = (email: string) =>
  authRoute.POST(request("/api/auth/sign-in/email", { method: "POST", body: { email, password: PASSWORD } }));
const last = () => {
  const row = listRecord(h.db, 0, 100).at(-1);
  return row && [row.kind, JSON.parse(row.bodyJson)];
};

test("a new name is the name everywhere, once in the record; an empty one is refused", async () => {
  expect((await rename("  Ann Marlow ")).status).toBe(200);
  expect([...namesById(h.db).values()]).toContain("Ann Marlow");
  expect(last()).toEqual(["name-changed", { name: "Ann Marlow", before: "Ann" }]);
  const rows = listRecord(h.db, 0, 100).length;
  await rename("Ann Marlow");
  expect(listRecord(h.db, 0, 100)).toHaveLength(rows);
  expect((await rename(" ")).status).toBe(422);
  expect((await rename("X", "")).status).toBe(401);
});

test("a new address needs the password, signs in from then on, and the old one does not", async () => {
  expect((await move("marlow@quay.example", "not my password")).status).toBe(403);
  expect((await signIn("ann@quay.example")).status).toBe(200);
  expect(await (await move(" Marlow@Quay.Example ")).json()).toEqual({ email: "marlow@quay.example" });
  expect(last()).toEqual(["email-changed", { email: "marlow@quay.example", before: "ann@quay.example" }]);
  expect((await signIn("marlow@quay.example")).status).toBe(200);
  expect((await signIn("ann@quay.example")).status).toBe(401);
});

test("an address that is somebody’s, or none, is refused in words", async () => {
  const taken = await move("BO@quay.example");
  expect(taken.status).toBe(409);
  expect((await taken.json()).error.message).toContain("already has an account");
  expect((await move("quay")).status).toBe(422);
});

test("passwords are not guessed here: after five wrong ones the sixth waits", async () => {
  for (let i = 0; i < 5; i++) expect((await move("a@quay.example", `guess ${i} of many`)).status).toBe(403);
  const sixth = await move("a@quay.example");
  expect(sixth.status).toBe(429);
  expect((await sixth.json()).error.message).toMatch(/Too many wrong passwords/);
});
