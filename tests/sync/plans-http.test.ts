/** Plans over HTTP with real sessions: the routes as a page of the studio, and somebody else's page, call them. */

import { afterEach, beforeEach, expect, test } from "vitest";
import * as cardRoute from "#app/api/editions/[planId]/[number]/card/route.ts";
import * as cuesRoute from "#app/api/editions/[planId]/[number]/cues.vtt/route.ts";
import * as planRoute from "#app/api/editions/[planId]/[number]/plan/route.ts";
import * as fileRoute from "#app/api/plans/[id]/file/route.ts";
import * as handBackRoute from "#app/api/plans/[id]/hand-back/route.ts";
import * as handInRoute from "#app/api/plans/[id]/hand-in/route.ts";
import * as readRoute from "#app/api/plans/[id]/read/route.ts";
import * as signRoute from "#app/api/plans/[id]/sign/route.ts";
import * as threadsRoute from "#app/api/plans/[id]/threads/route.ts";
import * as importRoute from "#app/api/plans/import/route.ts";
import * as plansRoute from "#app/api/plans/route.ts";
import * as settleRoute from "#app/api/threads/[id]/settle/route.ts";
import { sha256Hex } from "#lib/canonical/canonical.ts";
import { planDoc } from "#server/context/live-documents.ts";
import { setSpringline } from "#server/context/springline.ts";
import { writeGoodClass } from "../support/good-class.ts";
import { openStudio, type PlanStudio, ROOMS, type Who } from "../support/plan-studio.ts";
import { signInAll } from "../support/sign-in.ts";

let s: PlanStudio;
let cookies: ReadonlyMap<Who, string>;
beforeEach(async () => {
  s = openStudio({ clock: Date.now() });
  setSpringline(s.app);
  cookies = await signInAll(s, ["jonas", "ines", "sam"]);
});
afterEach(async () => {
  setSpringline(undefined);
  await s.stop();
});

type Route = (request: Request, context?: { params: Promise<Record<string, string>> }) => Promise<Response>;
interface Call {
  readonly params?: Record<string, string>;
  readonly body?: unknown;
  readonly origin?: string;
  readonly type?: string;
}

/** Sends as `who`, or as nobody. */
function call(route: Route, method: "GET" | "POST", who: Who | null, asked: Call = {}): Promise<Response> {
  const headers = new Headers({
    origin: asked.origin ?? s.app.env.origin,
    "content-type": asked.type ?? "application/json",
  });
  const cookie = who && cookies.get(who);
  if (cookie) headers.set("cookie", cookie);
  const body =
    asked.body === undefined ? {} : { body: typeof asked.body === "string" ? asked.body : JSON.stringify(asked.body) };
  const request = new Request(`${s.app.env.origin}/api`, { method, headers, ...body });
  return route(request, { params: Promise.resolve(asked.params ?? {}) });
}
const codeOf = async (response: Response): Promise<string> =>
  response.ok ? "ok" : `${response.status} ${(await response.json()).error.code}`;

test("a trainee hands in and is refused every act of a lead; the lead's session does them", async () => {
  const body = { title: "Pull and press", lengthSeconds: 600, roomId: ROOMS.harbour };
  const made = await call(plansRoute.POST, "POST", "jonas", { body });
  expect(made.status).toBe(201);
  const { id } = await made.json();
  const params = { id };
  await writeGoodClass(s, planDoc(id), [s.people.jonas, s.people.jonas]);
  expect(await codeOf(await call(handInRoute.POST, "POST", "jonas", { params, body: {} }))).toBe("ok");

  const sign = { params, body: { hash: "0".repeat(64) } };
  expect(await codeOf(await call(readRoute.POST, "POST", "jonas", { params }))).toBe("403 no-right");
  expect(await codeOf(await call(signRoute.POST, "POST", "jonas", sign))).toBe("403 no-right");
  expect(await codeOf(await call(handBackRoute.POST, "POST", "jonas", { params, body: { note: "x" } }))).toBe(
    "403 no-right",
  );
  expect(await codeOf(await call(signRoute.POST, "POST", "sam", sign))).toBe("404 not-found");
  expect(await codeOf(await call(signRoute.POST, "POST", null, sign))).toBe("401 not-signed-in");
  expect(await codeOf(await call(handBackRoute.POST, "POST", "ines", { params, body: { note: " " } }))).toBe(
    "422 invalid",
  );

  const open = { params, body: { anchor: { kind: "plan" }, body: "Nearly" } };
  const thread = await (await call(threadsRoute.POST, "POST", "ines", open)).json();
  const { hash, blockers } = await (await call(readRoute.POST, "POST", "ines", { params })).json();
  expect(blockers).toMatchObject([{ code: "open-threads" }]);
  expect(await codeOf(await call(signRoute.POST, "POST", "ines", { params, body: { hash } }))).toBe("409 open-threads");
  await call(settleRoute.POST, "POST", "ines", { params: { id: thread.id }, body: { settled: true } });
  const signed = await call(signRoute.POST, "POST", "ines", { params, body: { hash } });
  expect(await signed.json()).toEqual({ edition: 1, hash });

  const edition = { params: { planId: id, number: "1" } };
  const plan = await call(planRoute.GET, "GET", "sam", edition);
  expect(plan.headers.get("content-disposition")).toContain("pull-and-press-edition-1.plan.json");
  expect(sha256Hex(await plan.text())).toBe(hash);
  expect((await call(cuesRoute.GET, "GET", "sam", edition)).headers.get("content-type")).toContain("text/vtt");
  expect(await codeOf(await call(cardRoute.GET, "GET", "sam", { params: { planId: id, number: "one" } }))).toBe(
    "404 not-found",
  );
});

test("another site's page, another type and a key given twice are refused before anything happens", async () => {
  const body = { title: "x", lengthSeconds: 600 };
  const other = await call(plansRoute.POST, "POST", "jonas", { body, origin: "http://elsewhere.example" });
  expect(await codeOf(other)).toBe("403 other-origin");
  expect(await codeOf(await call(plansRoute.POST, "POST", "jonas", { body, type: "text/plain" }))).toBe(
    "415 not-json-type",
  );
  const made = await (await call(plansRoute.POST, "POST", "jonas", { body })).json();
  const file = await (await call(fileRoute.GET, "GET", "jonas", { params: made })).text();
  expect(await codeOf(await call(importRoute.POST, "POST", "jonas", { body: file }))).toBe("ok");
  const twice = file.replace('"title"', '"title": "first", "title"');
  expect(await codeOf(await call(importRoute.POST, "POST", "jonas", { body: twice }))).toBe("422 bad-plan-file");
  expect(await codeOf(await call(importRoute.POST, "POST", "jonas", { body: file, type: "text/plain" }))).toBe(
    "415 not-json-type",
  );
  expect((await (await call(plansRoute.GET, "GET", "jonas")).json()).plans).toHaveLength(2);
});
