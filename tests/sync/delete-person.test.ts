/** Deleting an account over its route, beside sockets, sign-ins and other managers at the same moment: nothing is half done. */
import { createServer, type Server } from "node:http";
import type { AddressInfo } from "node:net";
import { afterEach, beforeEach, expect, test } from "vitest";
import * as authRoute from "#app/api/auth/[...all]/route.ts";
import * as nameRoute from "#app/api/me/name/route.ts";
import * as deletionRoute from "#app/api/people/[userId]/deletion/route.ts";
import { tableColumns, workspaceTables } from "#db/file/table-rows.ts";
import { readPerson } from "#db/repos/people-repo.ts";
import { findRecord } from "#db/repos/record-repo.ts";
import { CLOSE } from "#lib/protocol/close.ts";
import { formatDocName } from "#lib/protocol/messages.ts";
import { planDoc } from "#server/context/live-documents.ts";
import { setSpringline } from "#server/context/springline.ts";
import { deletePerson, readDeletion } from "#server/people/delete-person.ts";
import { createPlan } from "#server/plans/create-plan.ts";
import { proveRecord } from "#server/record/prove-record.ts";
import { studioFaults } from "#server/studio-files/studio-faults.ts";
import { attachSync } from "#server/sync/attach.ts";
import { must, openStudio, type PlanStudio, ROOMS, type Who } from "#tests/support/plan-studio.ts";
import { RawClient } from "#tests/support/raw-client.ts";
import { PASSWORD, signInAll } from "#tests/support/sign-in.ts";

let s: PlanStudio;
let http: Server;
let url: string;
let cookies: ReadonlyMap<Who, string>;
let secret: string;
let team: string;

beforeEach(async () => {
  s = openStudio({ clock: Date.now() });
  setSpringline(s.app);
  http = createServer();
  attachSync({ rooms: s.rooms, server: http });
  await new Promise<void>((resolve) => http.listen(0, "127.0.0.1", resolve));
  url = `ws://127.0.0.1:${(http.address() as AddressInfo).port}`;
  s.db.raw.prepare("update member set role = 'lead,manager' where user_id = ?").run(s.people.ines.id);
  cookies = await signInAll(s, ["petra", "ines", "marta", "jonas", "sam"]);
  const made = { lengthSeconds: 600, roomId: ROOMS.harbour };
  secret = must(createPlan(s.app, s.people.marta, { title: "Mine alone", ...made })).id;
  team = must(createPlan(s.app, s.people.marta, { title: "Ours", ...made })).id;
  s.db.raw.prepare("update plan set team = 1 where id = ?").run(team);
});
afterEach(async () => {
  http.closeAllConnections();
  await new Promise((resolve) => http.close(resolve));
  setSpringline(undefined);
  await s.stop();
});

const nameOf = (who: Who): string => readPerson(s.db, s.people[who].id)?.name ?? "";

function ask(
  route: (request: Request, context: never) => Promise<Response>,
  who: Who | null,
  body?: unknown,
  about: Who = "marta",
) {
  const headers = new Headers({ origin: s.app.env.origin, "content-type": "application/json" });
  const cookie = who && cookies.get(who);
  if (cookie) headers.set("cookie", cookie);
  const init = body === undefined ? {} : { method: "POST", body: JSON.stringify(body) };
  const params = Promise.resolve({ userId: s.people[about].id });
  return route(new Request(`${s.app.env.origin}/api/x`, { headers, ...init }), { params } as never);
}
const erase = (who: Who | null, change: object = {}) =>
  ask(deletionRoute.POST, who, { name: nameOf("marta"), plansTo: null, privatePlans: 1, ...change });

/** No row of a document, session or account that belongs to nothing, and a record that holds. */
function expectWhole(): void {
  const orphans = (sql: string) => s.db.raw.prepare(sql).pluck().get();
  expect(orphans("select count(*) from doc_update where name not in (select name from document)")).toBe(0);
  expect(
    orphans("select count(*) from document where name like 'plan/%' and substr(name, 6) not in (select id from plan)"),
  ).toBe(0);
  expect(orphans("select count(*) from session where user_id not in (select user_id from member)")).toBe(0);
  expect(orphans("select count(*) from account where user_id not in (select user_id from member)")).toBe(0);
  expect(proveRecord(s.db).holds).toBe(true);
}

test("only managers, and only with the name typed; what was told is what is done", async () => {
  for (const who of ["marta", "jonas", "sam"] as const) {
    expect((await erase(who)).status).toBe(403);
    expect((await ask(deletionRoute.GET, who)).status).toBe(403);
  }
  expect((await erase(null)).status).toBe(401);
  expect((await erase("petra", { name: "marta" })).status).toBe(409);
  expect((await erase("petra", { privatePlans: 7 })).status).toBe(409);
  const told = await (await ask(deletionRoute.GET, "petra")).json();
  expect(told).toMatchObject({ privatePlans: ["Mine alone"], kept: { plans: 1 }, pseudonym: "Former coach 1" });
  expect(readPerson(s.db, s.people.marta.id)).toBeDefined();
  expect((await erase("petra")).status).toBe(200);
  expectWhole();
});

test("sockets close and the session is refused at once; who writes beside them loses nothing", async () => {
  const open = (who: Who, id: string) => new RawClient(url, planDoc(id), { cookies: cookies.get(who) ?? "" }).synced();
  const [own, ours, other] = await Promise.all([open("marta", secret), open("marta", team), open("ines", team)]);
  for (let n = 0; n < 5; n++) {
    own.edit((doc) => doc.getMap("head").set("late", n));
    ours.edit((doc) => doc.getMap("head").set("late", n));
    other.edit((doc) => doc.getMap("head").set("beside", n));
  }
  const done = erase("petra");
  own.edit((doc) => doc.getMap("head").set("late", "in the same moment"));
  expect((await done).status).toBe(200);
  expect([CLOSE.notSignedIn.code, CLOSE.noRight.code]).toContain(await own.closed());
  expect([CLOSE.notSignedIn.code, CLOSE.noRight.code]).toContain(await ours.closed());
  expect((await ask(nameRoute.PUT, "marta", { name: "Back" })).status).toBe(401);
  const again = new RawClient(url, planDoc(team), { cookies: cookies.get("marta") ?? "" });
  expect(await again.closed()).toBe(CLOSE.notSignedIn.code);
  other.edit((doc) => doc.getMap("head").set("beside", "after"));
  await other.saved();
  expect(s.rooms.withDoc(planDoc(team), (doc) => doc.getMap("head").get("beside"))).toBe("after");
  expect(other.closeCode).toBeUndefined();
  other.end();
  await s.rooms.stop();
  expectWhole();
});

/** Tables with a row that names the plan or its document. The record goes on saying that there was one. */
function tablesNaming(planId: string): string[] {
  const { raw } = s.db;
  return workspaceTables(raw).filter(
    (table) =>
      !["record", "plan_event"].includes(table) &&
      tableColumns(raw, table).some(({ name }) =>
        raw.prepare(`select 1 from "${table}" where instr(cast("${name}" as text), ?) > 0`).get(planId),
      ),
  );
}

const tick = (ms: number) => new Promise((done) => setTimeout(done, ms));

test("who types all the while leaves no row behind", async () => {
  const open = () => new RawClient(url, planDoc(secret), { cookies: cookies.get("marta") ?? "" }).synced();
  const pages = await Promise.all([open(), open(), open()]);
  let typed = 0;
  const typing = pages.map((page) => setInterval(() => page.edit((doc) => doc.getMap("head").set("late", typed++)), 5));
  await tick(60);
  expect(tablesNaming(secret)).toContain("doc_update");
  const done = erase("petra");
  await tick(2);
  for (const page of pages) page.edit((doc) => doc.getMap("head").set("late", "in the same moment"));
  expect((await done).status).toBe(200);
  await tick(60);
  typing.forEach(clearInterval);
  for (const page of pages)
    expect([CLOSE.notSignedIn.code, CLOSE.noRight.code, CLOSE.unknownDocument.code]).toContain(await page.closed());
  expect(s.rooms.health()).toMatchObject({ failing: [] });
  expect(s.rooms.opened("plan")).not.toContainEqual(planDoc(secret));
  expect(await s.rooms.stop()).toEqual({ unsaved: [] });
  expect(tablesNaming(secret)).toEqual([]);
  expect(studioFaults(s.db, [])).toEqual([]);
  expectWhole();
});

test("a room whose document is gone closes as unknown and keeps nothing; rows without a document are a fault", async () => {
  const name = formatDocName(planDoc(team));
  const [page, other] = await Promise.all(
    [team, secret].map((id) => new RawClient(url, planDoc(id), { cookies: cookies.get("marta") ?? "" }).synced()),
  );
  const said = () => studioFaults(s.db, []).filter((fault) => fault.startsWith("There are changes"));
  s.db.raw.prepare("delete from document where name = ?").run(name);
  expect(said()).toEqual([`There are changes of ${name}, but no such document.`]);
  s.db.raw.prepare("delete from doc_update where name = ?").run(name);
  page?.edit((doc) => doc.getMap("head").set("late", 1));
  other?.edit((doc) => doc.getMap("head").set("beside", 1));
  expect(await page?.closed()).toBe(CLOSE.unknownDocument.code);
  await other?.saved();
  expect(said()).toEqual([]);
  expect(s.rooms.opened("plan")).toEqual([planDoc(secret)]);
  expect(s.rooms.health()).toMatchObject({ failing: [] });
  other?.end();
});

test("a sign-in in the same moment opens nothing, before or after", async () => {
  const signIn = () =>
    authRoute.POST(
      new Request(`${s.app.env.origin}/api/auth/sign-in/email`, {
        method: "POST",
        headers: { origin: s.app.env.origin, "content-type": "application/json" },
        body: JSON.stringify({ email: "marta@tholepin.example", password: PASSWORD }),
      }),
    );
  const { password } = await s.app.auth.$context;
  const { verify } = password;
  let deleted = () => {};
  const untilDeleted = new Promise<void>((done) => {
    deleted = done;
  });
  const compared = new Promise<void>((done) => {
    password.verify = async (given) => {
      const isRight = await verify(given);
      done();
      await untilDeleted;
      return isRight;
    };
  });
  const signing = signIn();
  await compared;
  expect((await erase("petra")).status).toBe(200);
  deleted();
  const answer = await signing;
  expect(answer.status).toBeGreaterThanOrEqual(400);
  expect(JSON.stringify(await answer.json())).not.toMatch(/marta/i);
  expect((await signIn()).status).toBe(401);
  expectWhole();
});

test("of two managers at once one deletes; of two who delete each other one stays", async () => {
  const both = await Promise.all([erase("petra"), erase("ines")]);
  expect(both.map(({ status }) => status).sort()).toEqual([200, 404]);
  const each = await Promise.all([
    ask(deletionRoute.POST, "petra", { name: nameOf("ines"), plansTo: null, privatePlans: 0 }, "ines"),
    ask(deletionRoute.POST, "ines", { name: nameOf("petra"), plansTo: null, privatePlans: 0 }, "petra"),
  ]);
  expect(each.map(({ status }) => status)).toContain(200);
  expect(each.map(({ status }) => status).filter((status) => status !== 200)).toHaveLength(1);
  expect(s.db.raw.prepare("select count(*) from member where role like '%manager%'").pluck().get()).toBe(1);
  const rows = findRecord(s.db, { kinds: ["person-deleted"] }, { after: 0, before: 1e9, limit: 9 });
  expect(rows).toHaveLength(2);
  expectWhole();
});

test("a manager deletes their own account while another stays, and is out at once", async () => {
  const self = { name: nameOf("petra"), plansTo: null, privatePlans: 0 };
  expect((await ask(deletionRoute.POST, "petra", self, "petra")).status).toBe(200);
  expect((await ask(deletionRoute.GET, "petra")).status).toBe(401);
  const last = readDeletion(s.app, { ...s.people.ines, roles: ["lead", "manager"] }, s.people.ines.id);
  expect(last).toMatchObject({ error: { code: "last-manager" } });
  expectWhole();
});

test("a fault in the middle leaves everything as it was", () => {
  const before = s.db.raw.prepare("select count(*) from record").pluck().get();
  s.db.raw.exec("create trigger fault before update on user begin select raise(abort, 'a fault'); end");
  const petra = { ...s.people.petra };
  const asked = { name: nameOf("marta"), plansTo: null, privatePlans: 1 };
  expect(() => deletePerson(s.app, petra, s.people.marta.id, asked)).toThrow(/a fault/);
  expect(readPerson(s.db, s.people.marta.id)?.email).toBe("marta@tholepin.example");
  expect(s.db.raw.prepare("select count(*) from record").pluck().get()).toBe(before);
  expect(s.db.raw.prepare("select count(*) from plan where id = ?").pluck().get(secret)).toBe(1);
  expect(s.db.raw.pragma("secure_delete", { simple: true })).toBe(0);
  expectWhole();
});
