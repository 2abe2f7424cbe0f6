/** Threads, remarks and accepted findings over HTTP with real sessions: who is refused, and how. */
import { afterEach, beforeEach, describe, expect, test } from "vitest";
import * as endRoute from "#app/api/acceptances/[id]/end/route.ts";
import * as acceptancesRoute from "#app/api/plans/[id]/acceptances/route.ts";
import * as readersRoute from "#app/api/plans/[id]/readers/route.ts";
import * as threadsRoute from "#app/api/plans/[id]/threads/route.ts";
import * as savedRoute from "#app/api/plans/[id]/threads.jsonld/route.ts";
import * as remarkRoute from "#app/api/remarks/[id]/route.ts";
import * as remarksRoute from "#app/api/remarks/route.ts";
import * as commentsRoute from "#app/api/threads/[id]/comments/route.ts";
import * as seenRoute from "#app/api/threads/[id]/seen/route.ts";
import * as settleRoute from "#app/api/threads/[id]/settle/route.ts";
import { planDoc } from "#server/context/live-documents.ts";
import { setSpringline } from "#server/context/springline.ts";
import { createPlan } from "#server/plans/create-plan.ts";
import { writeGoodClass } from "../support/good-class.ts";
import { must, openStudio, type PlanStudio, ROOMS, type Who } from "../support/plan-studio.ts";
import { signInAll } from "../support/sign-in.ts";

let s: PlanStudio;
let cookies: ReadonlyMap<Who, string>;
let id = "";
beforeEach(async () => {
  s = openStudio({ clock: Date.now() });
  setSpringline(s.app);
  cookies = await signInAll(s, ["ines", "marta", "jonas", "petra", "sam"]);
  const { jonas } = s.people;
  id = must(createPlan(s.app, jonas, { title: "Pull and press", lengthSeconds: 600, roomId: ROOMS.harbour })).id;
  await writeGoodClass(s, planDoc(id), [jonas, jonas]);
});
afterEach(async () => {
  setSpringline(undefined);
  await s.stop();
});

type Route = (request: Request, context?: { params: Promise<Record<string, string>> }) => Promise<Response>;
type Method = "GET" | "POST" | "PATCH";

function call(
  route: Route,
  method: Method,
  who: Who | null,
  params: Record<string, string>,
  body?: unknown,
  query = "",
) {
  const headers = new Headers({ origin: s.app.env.origin, "content-type": "application/json" });
  const cookie = who && cookies.get(who);
  if (cookie) headers.set("cookie", cookie);
  const sent = body === undefined ? {} : { body: JSON.stringify(body) };
  const request = new Request(`${s.app.env.origin}/api${query}`, { method, headers, ...sent });
  return route(request, { params: Promise.resolve(params) });
}
const codeOf = async (asked: Promise<Response>): Promise<string> => {
  const response = await asked;
  return response.ok ? "ok" : `${response.status} ${(await response.json()).error.code}`;
};
const jsonOf = async (asked: Promise<Response>) => (await asked).json();
const PLAN = { kind: "plan" };
const thread = async (): Promise<string> =>
  (await jsonOf(call(threadsRoute.POST, "POST", "ines", { id }, { anchor: PLAN, body: "Hm" }))).id;
const OUTSIDERS: readonly Who[] = ["marta", "petra", "sam"];

describe("threads", () => {
  test("of another's plan are not there, for reading, answering, settling, seeing, saving or naming", async () => {
    const t = await thread();
    for (const who of OUTSIDERS) {
      expect(await codeOf(call(threadsRoute.GET, "GET", who, { id }))).toBe("404 not-found");
      expect(await codeOf(call(threadsRoute.POST, "POST", who, { id }, { anchor: PLAN, body: "x" }))).toBe(
        "404 not-found",
      );
      expect(await codeOf(call(commentsRoute.POST, "POST", who, { id: t }, { body: "x" }))).toBe("404 not-found");
      expect(await codeOf(call(settleRoute.POST, "POST", who, { id: t }, { settled: true }))).toBe("404 not-found");
      expect(await codeOf(call(seenRoute.POST, "POST", who, { id: t }, { comments: ["c"] }))).toBe("404 not-found");
      expect(await codeOf(call(readersRoute.GET, "GET", who, { id }))).toBe("404 not-found");
      expect(await codeOf(call(savedRoute.GET, "GET", who, { id }))).toBe("404 not-found");
    }
    expect(await codeOf(call(commentsRoute.POST, "POST", null, { id: t }, { body: "x" }))).toBe("401 not-signed-in");
  });

  test("take no comment that is too long, no strange place and no name that is not there", async () => {
    const t = await thread();
    const answer = (body: unknown) => codeOf(call(commentsRoute.POST, "POST", "jonas", { id: t }, body));
    expect(await answer({ body: "x".repeat(4001) })).toBe("422 invalid");
    expect(await answer({ body: " " })).toBe("422 invalid");
    expect(await answer({ body: "@Ines", mentions: ["sam"] })).toBe("422 unknown-mention");
    expect(await answer({ body: "@Ines", mentions: ["ines"] })).toBe("ok");
    const open = (anchor: unknown) => codeOf(call(threadsRoute.POST, "POST", "jonas", { id }, { anchor, body: "x" }));
    expect(await open({ kind: "change", itemId: "gone" })).toBe("422 no-such-item");
    expect(await open({ kind: "finding", rule: "r", itemIds: ["m1"], key: "other:key" })).toBe("422 invalid");
    expect(await open({ kind: "finding", rule: "r", itemIds: ["m1"], key: `r:${"x".repeat(400)}` })).toBe(
      "422 invalid",
    );
    expect(await open({ kind: "change", itemId: "m2" })).toBe("ok");
  });

  test("are not settled over an answer that was not in sight; a page that does not say is answered as before", async () => {
    const t = await thread();
    await call(commentsRoute.POST, "POST", "jonas", { id: t }, { body: "Done" });
    const settle = (body: unknown) => call(settleRoute.POST, "POST", "ines", { id: t }, body);
    const refused = await settle({ settled: true, seen: 1 });
    expect(refused.status).toBe(409);
    expect((await refused.json()).error).toMatchObject({
      code: "answered-since",
      details: { comments: [{ body: "Done" }] },
    });
    for (const seen of [-1, 1.5, "2"]) expect(await codeOf(settle({ settled: true, seen }))).toBe("422 invalid");
    expect(await codeOf(settle({ settled: true }))).toBe("ok");
    expect(await codeOf(settle({ settled: false, seen: 0 }))).toBe("ok");
    expect(await codeOf(settle({ settled: true, seen: 2 }))).toBe("ok");
  });

  test("are saved as linked data with a name of their own", async () => {
    await thread();
    const file = await call(savedRoute.GET, "GET", "jonas", { id });
    expect(file.headers.get("content-type")).toBe('application/ld+json; profile="http://www.w3.org/ns/anno.jsonld"');
    expect(file.headers.get("content-disposition")).toContain("pull-and-press.threads.jsonld");
    expect(await file.json()).toMatchObject({ type: "AnnotationCollection", total: 1 });
  });
});

test("a finding is accepted and ended by a lead alone", async () => {
  const finding = (await s.findings(id)).find(({ level }) => level === "look");
  const { rule, key, items, message, values } = finding ?? {};
  const body = { finding: { rule, key, items, message, values }, reason: "They know it well." };
  const accept = (who: Who | null, sent: unknown = body) => call(acceptancesRoute.POST, "POST", who, { id }, sent);
  expect(await codeOf(accept("jonas"))).toBe("403 no-right");
  for (const who of OUTSIDERS) expect(await codeOf(accept(who))).toBe("404 not-found");
  expect(await codeOf(accept(null))).toBe("401 not-signed-in");
  expect(await codeOf(accept("ines", { ...body, reason: "Is fine" }))).toBe("422 invalid");
  const { id: made } = await jsonOf(accept("ines"));
  expect(await codeOf(accept("ines"))).toBe("409 already-accepted");
  expect((await jsonOf(call(acceptancesRoute.GET, "GET", "jonas", { id }))).accepted).toHaveLength(1);
  expect(await codeOf(call(acceptancesRoute.GET, "GET", "sam", { id }))).toBe("404 not-found");
  const end = (who: Who) => codeOf(call(endRoute.POST, "POST", who, { id: made }));
  expect(await end("jonas")).toBe("403 no-right");
  expect(await end("petra")).toBe("404 not-found");
  expect(await end("ines")).toBe("ok");
  expect(await end("ines")).toBe("409 already-ended");
});

test("remarks are read by who comments and written by leads", async () => {
  const made = { words: "Say it once.", ruleId: null, moveId: null };
  const add = (who: Who, body: unknown = made) => call(remarksRoute.POST, "POST", who, {}, body);
  for (const who of ["jonas", ...OUTSIDERS] as const) expect(await codeOf(add(who))).toBe("403 no-right");
  const { id: remark } = await jsonOf(add("ines"));
  expect(await codeOf(add("ines", { ...made, words: "x".repeat(601) }))).toBe("422 invalid");
  const change = (who: Who, body: unknown) => codeOf(call(remarkRoute.PATCH, "PATCH", who, { id: remark }, body));
  expect(await change("jonas", { inUse: false })).toBe("403 no-right");
  expect(await change("ines", { inUse: false })).toBe("ok");
  expect((await jsonOf(call(remarksRoute.GET, "GET", "jonas", {}))).remarks).toEqual([]);
  expect((await jsonOf(call(remarksRoute.GET, "GET", "ines", {}, undefined, "?all=1"))).remarks).toHaveLength(1);
  expect(await codeOf(call(remarksRoute.GET, "GET", "jonas", {}, undefined, "?all=1"))).toBe("403 no-right");
  expect(await codeOf(call(remarksRoute.GET, "GET", "sam", {}))).toBe("403 no-right");
});
