/**
 * Role by action, every cell: for each route and for the socket of a plan, each role on each kind of plan gets through where
 * the policy says so, and nowhere else. What is expected is worked out by `lib/policy`; `tests/unit/policy.test.ts` holds the
 * policy to the studio's own words.
 */
import { readdirSync, readFileSync } from "node:fs";
import { createServer, type Server } from "node:http";
import type { AddressInfo } from "node:net";
import { join, relative } from "node:path";
import { pathToFileURL } from "node:url";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { insertThread } from "#db/repos/thread-repo.ts";
import { acceptanceTable, planMomentTable, planTextTable, proposalTable } from "#db/review-schema.ts";
import { editionTable } from "#db/schema.ts";
import { planParts } from "#lib/doc/layout.ts";
import { can, canPlan, canReadEditions, type PlanAction, type PlanSubject } from "#lib/policy/can.ts";
import { planDoc } from "#server/context/live-documents.ts";
import { setSpringline } from "#server/context/springline.ts";
import { createPlan } from "#server/plans/create-plan.ts";
import { attachSync } from "#server/sync/attach.ts";
import { must, openStudio, type PlanStudio, ROOMS, type Who } from "#tests/support/plan-studio.ts";
import { RawClient } from "#tests/support/raw-client.ts";
import { ROUTE_RIGHTS, type RouteRight } from "#tests/support/route-rights.ts";
import { signInAll } from "#tests/support/sign-in.ts";

const API = join(import.meta.dirname, "../../app/api");
const METHODS = ["GET", "POST", "PUT", "PATCH", "DELETE"] as const;

/** "POST plans/[id]/sign", for every method of every route file. */
const routes = readdirSync(API, { recursive: true, encoding: "utf8" })
  .filter((name) => name.endsWith("route.ts"))
  .flatMap((name) => {
    const source = readFileSync(join(API, name), "utf8");
    const path = relative(API, join(API, name)).replace(/\/route\.ts$/, "");
    return METHODS.filter((method) => new RegExp(`export const ${method}\\b|\\bas ${method}\\b`).test(source)).map(
      (method) => `${method} ${path}`,
    );
  })
  .sort();

test("every route is in the table, and every line of the table is a route", () => {
  expect(Object.keys(ROUTE_RIGHTS).sort()).toEqual(routes);
});

const PEOPLE: readonly Who[] = ["jonas", "marta", "ines", "petra", "sam"];
type Kind = "own" | "shared" | "team" | "other";
const KINDS: readonly Kind[] = ["own", "shared", "team", "other"];

let s: PlanStudio;
let http: Server;
let url: string;
let cookies: ReadonlyMap<Who, string>;

beforeAll(async () => {
  s = openStudio({ clock: Date.now() });
  setSpringline(s.app);
  cookies = await signInAll(s, PEOPLE);
  http = createServer();
  attachSync({ rooms: s.rooms, server: http });
  await new Promise<void>((resolve) => http.listen(0, "127.0.0.1", resolve));
  url = `ws://127.0.0.1:${(http.address() as AddressInfo).port}`;
});
afterAll(async () => {
  http.closeAllConnections();
  await new Promise((resolve) => http.close(resolve));
  setSpringline(undefined);
  await s.stop();
});

interface Made {
  readonly subject: PlanSubject;
  readonly id: string;
  /** What hangs on the plan, by the folder of its routes. */
  readonly parts: Readonly<Record<string, string>>;
}

/** A plan of that kind as `who` sees it, with one of everything that hangs on a plan. */
function planOf(who: Who, kind: Kind): Made {
  const { id } = must(createPlan(s.app, s.people.noor, { title: "Row", lengthSeconds: 600, roomId: ROOMS.harbour }));
  const ownerId = kind === "own" ? s.people[who].id : s.people.noor.id;
  const team = kind === "team";
  s.db.raw.prepare("update plan set owner_id = ?, team = ? where id = ?").run(ownerId, team ? 1 : 0, id);
  const sharedWith = kind === "shared" ? [s.people[who].id] : [];
  for (const user of sharedWith) s.db.raw.prepare("insert into plan_share values (?, ?)").run(id, user);
  const newest = partsOf(id, s.people[who].id);
  return { subject: { ownerId, sharedWith, team }, id, parts: newest };
}

/** Rows as the program writes them, with as little in them as they may have. */
function partsOf(planId: string, byId: string): Made["parts"] {
  const [thread, proposal, acceptance] = [s.app.newId(), s.app.newId(), s.app.newId()];
  const at = s.app.now();
  const hash = "0".repeat(64);
  insertThread(s.db, { id: thread, planId, anchor: { kind: "plan" }, at });
  const { orm } = s.db;
  orm.insert(proposalTable).values({ id: proposal, planId, itemId: null, byId, at, partsJson: "[]" }).run();
  const accepted = { ruleId: "uneven-sides", findingKey: hash, message: "Left gets less.", reason: "It is so here." };
  orm
    .insert(acceptanceTable)
    .values({ id: acceptance, planId, byId, at, ...accepted })
    .run();
  const empty = { hash, planJson: "{}", cardJson: "{}", findingsJson: "[]" };
  orm
    .insert(editionTable)
    .values({ planId, number: 1, ...empty, signedBy: "ines", signedAt: at })
    .run();
  orm.insert(planTextTable).values({ planId, hash, planJson: "{}" }).run();
  const moment = {
    planId,
    round: 1,
    kind: "offered",
    at,
    actorId: byId,
    hash,
    findingsJson: "[]",
    threadsJson: "[]",
  } as const;
  const { lastInsertRowid } = orm.insert(planMomentTable).values(moment).run();
  return { threads: thread, proposals: proposal, acceptances: acceptance, moments: String(lastInsertRowid) };
}

async function statusOf(route: string, who: Who | null, made: Made): Promise<number> {
  const [method = "", path = ""] = route.split(" ");
  const file = pathToFileURL(join(API, path, "route.ts")).href;
  const handlers = (await import(/* @vite-ignore */ file)) as Record<string, (...args: unknown[]) => Promise<Response>>;
  const headers = new Headers({ origin: s.app.env.origin, "content-type": "application/json" });
  const cookie = who && cookies.get(who);
  if (cookie) headers.set("cookie", cookie);
  const { body } = ROUTE_RIGHTS[route] ?? {};
  const request = new Request(`${s.app.env.origin}/api/x`, {
    ...{ method, headers },
    ...(body === undefined ? {} : { body: JSON.stringify(body) }),
  });
  const id = made.parts[path.split("/")[0] ?? ""] ?? made.id;
  const params = {
    id,
    momentId: made.parts.moments,
    planId: made.id,
    number: "1",
    userId: "nobody",
    rule: "uneven-sides",
    month: "2026-11",
  };
  const response = await handlers[method]?.(request, { params: Promise.resolve(params) });
  return response?.status ?? 0;
}

const isOfPlan = (right: RouteRight): boolean => "plan" in right || "editions" in right;
const routesWhere = (of: (right: RouteRight) => boolean) =>
  routes.filter((route) => of(ROUTE_RIGHTS[route]?.right ?? { anybody: "" }));

function mayPlan(right: RouteRight, who: Who, subject: PlanSubject): boolean {
  if (lacks(right, who)) return false;
  if ("editions" in right) return canReadEditions(s.people[who], subject);
  if (!("plan" in right)) return false;
  return canPlan(s.people[who], right.plan, subject);
}

/** What the studio does not let them do anywhere tells nothing about the plan. */
const lacks = (right: RouteRight, who: Who): boolean =>
  "and" in right && right.and !== undefined && !can(s.people[who], right.and);

// First: the tests on a plan leave more than a thousand of them behind, and every list and month would go through those.
describe("in the studio", () => {
  const isStudio = (right: RouteRight) => "studio" in right || "oneOf" in right || "signedIn" in right;

  test.each(routesWhere(isStudio))("%s", async (route) => {
    const right = ROUTE_RIGHTS[route]?.right as RouteRight;
    const made = planOf("jonas", "own");
    for (const who of PEOPLE) {
      const actions = "studio" in right ? [right.studio] : "oneOf" in right ? right.oneOf : [];
      const may = "signedIn" in right || actions.some((action) => can(s.people[who], action));
      const status = await statusOf(route, who, made);
      if (may) expect([401, 403], `${who}: ${status}`).not.toContain(status);
      else expect([403, 404], `${who}: ${status}`).toContain(status);
    }
    expect(await statusOf(route, null, made)).toBe(401);
  });

  test.each(routesWhere((right) => "device" in right))("%s is for paired devices alone", async (route) => {
    const made = planOf("jonas", "own");
    for (const who of [...PEOPLE, null]) expect([401, 403]).toContain(await statusOf(route, who, made));
  });
});

describe("on a plan", () => {
  /** As they were made, since they were only read or nothing was allowed: another route may be asked about them. */
  const untouched = new Map<string, Made>();

  test.each(routesWhere(isOfPlan))("%s", async (route) => {
    const right = ROUTE_RIGHTS[route]?.right as RouteRight;
    for (const who of PEOPLE) {
      for (const kind of KINDS) {
        const made = untouched.get(`${who} ${kind}`) ?? planOf(who, kind);
        const status = await statusOf(route, who, made);
        if (route.startsWith("GET ") || [403, 404].includes(status)) untouched.set(`${who} ${kind}`, made);
        else untouched.delete(`${who} ${kind}`);
        const cell = `${who} on a plan that is ${kind}: ${status}`;
        if (mayPlan(right, who, made.subject)) expect([401, 403, 404], cell).not.toContain(status);
        // Somebody who may not read it is told that it does not exist.
        else if (canPlan(s.people[who], "plan.read", made.subject) || lacks(right, who))
          expect([403, 404], cell).toContain(status);
        else expect(status, cell).toBe(404);
      }
    }
    expect(await statusOf(route, null, untouched.get("jonas own") ?? planOf("jonas", "own"))).toBe(401);
  });
});

describe("over the socket of a plan", () => {
  const title = (id: string) => s.rooms.withDoc(planDoc(id), (doc) => planParts(doc).title.toString());

  test.each(KINDS)("a plan that is %s: who joins, who writes, who comments", async (kind) => {
    for (const who of PEOPLE) {
      const { id, subject } = planOf(who, kind);
      const may = (action: PlanAction) => canPlan(s.people[who], action, subject);
      const client = new RawClient(url, planDoc(id), { cookies: cookies.get(who) });
      if (!may("plan.read")) {
        // As for a plan that is not there.
        expect(await client.closed(), who).toBe(4404);
        continue;
      }
      await client.synced();
      const rights = { t: "rights", writes: may("plan.write"), comments: may("plan.comment") };
      expect(client.newsOf("rights"), who).toEqual([rights]);
      const before = title(id);
      client.edit((doc) => planParts(doc).title.insert(0, "New "));
      if (rights.writes) await client.saved();
      else expect(await client.closed(), who).toBe(4403);
      expect(title(id), who).toBe(rights.writes ? `New ${before}` : before);
      client.end();
    }
  });
});
