/** Signed plans that cannot vanish: raw requests with real sessions and a paired device. */

import { afterEach, beforeEach, expect, test } from "vitest";
import * as cardsRoute from "#app/api/devices/cards/route.ts";
import * as cardRoute from "#app/api/editions/[planId]/[number]/card/route.ts";
import * as withdrawRoute from "#app/api/editions/[planId]/[number]/withdraw/route.ts";
import * as archiveRoute from "#app/api/plans/[id]/archive/route.ts";
import * as planRoute from "#app/api/plans/[id]/route.ts";
import * as archivedRoute from "#app/api/plans/archived/route.ts";
import * as plansRoute from "#app/api/plans/route.ts";
import { listPlanEvents } from "#db/repos/event-repo.ts";
import { insertWithdrawal } from "#db/repos/withdrawal-repo.ts";
import { keepCards } from "#lib/floor/keep-cards.ts";
import { monthProblems } from "#lib/programme/problems.ts";
import { planDoc } from "#server/context/live-documents.ts";
import { setSpringline } from "#server/context/springline.ts";
import { addDevice } from "#server/devices/manage-devices.ts";
import { pairDevice } from "#server/devices/pair-device.ts";
import { planSummaries } from "#server/news/plan-summaries.ts";
import { createPlan } from "#server/plans/create-plan.ts";
import { handIn } from "#server/sign-off/hand-in.ts";
import { readForSignOff } from "#server/sign-off/read-for-sign-off.ts";
import { signPlan } from "#server/sign-off/sign-plan.ts";
import { must, openStudio, type PlanStudio, ROOMS, type Who } from "../support/plan-studio.ts";
import { signInAll } from "../support/sign-in.ts";
import { signedClass } from "../support/signed-class.ts";

let s: PlanStudio;
let cookies: ReadonlyMap<Who, string>;
let id: string;
let token: string;
const REASON = "The firm spring is being replaced";

beforeEach(async () => {
  s = openStudio({ clock: Date.now() });
  setSpringline(s.app);
  cookies = await signInAll(s, ["jonas", "ines", "sam", "marta", "petra"]);
  id = (await signedClass(s)).id;
  const { code } = must(addDevice(s.app, s.people.petra, { name: "Tablet", roomId: ROOMS.harbour }));
  token = must(pairDevice(s.app, code, "127.0.0.1")).token;
});
afterEach(async () => {
  setSpringline(undefined);
  await s.stop();
});

type Route = (request: Request, context?: { params: Promise<Record<string, string>> }) => Promise<Response>;
interface Sent {
  readonly status: number;
  readonly body: { error?: { code: string; message: string }; [key: string]: unknown };
}
async function call(
  route: Route,
  method: "GET" | "POST" | "DELETE",
  who: Who | "device" | null,
  asked: { params?: Record<string, string>; body?: unknown } = {},
): Promise<Sent> {
  const headers = new Headers({ origin: s.app.env.origin, "content-type": "application/json" });
  if (who === "device") headers.set("authorization", `Bearer ${token}`);
  const cookie = who && who !== "device" && cookies.get(who);
  if (cookie) headers.set("cookie", cookie);
  const body = asked.body === undefined ? {} : { body: JSON.stringify(asked.body) };
  const request = new Request(`${s.app.env.origin}/api`, { method, headers, ...body });
  const response = await route(request, { params: Promise.resolve(asked.params ?? {}) });
  return { status: response.status, body: await response.json() };
}
const withdraw = (who: Who | "device" | null, reason: unknown = REASON, number = "1") =>
  call(withdrawRoute.POST, "POST", who, { params: { planId: id, number }, body: { reason } });
const cardsNow = async () => {
  const { body } = await call(cardsRoute.GET, "GET", "device");
  const cards = body.cards as { card: { edition: { number: number } } }[];
  return { cards, numbers: cards.map(({ card }) => card.edition.number), withdrawn: body.withdrawn };
};

test("its owner's DELETE of a signed plan is refused with a sentence; archived it leaves the desks, not the devices", async () => {
  const params = { id };
  const refused = await call(planRoute.DELETE, "DELETE", "jonas", { params });
  expect(refused).toMatchObject({ status: 409, body: { error: { code: "was-signed" } } });
  expect(refused.body.error?.message).toMatch(/signed.*archive/i);
  expect((await cardsNow()).numbers).toEqual([1]);

  const archive = (who: Who, archived: boolean) => call(archiveRoute.POST, "POST", who, { params, body: { archived } });
  expect((await archive("ines", true)).status).toBe(403);
  expect((await archive("marta", true)).status).toBe(404);
  expect((await archive("jonas", true)).status).toBe(200);
  const listed = async (route: Route, who: Who) =>
    ((await call(route, "GET", who)).body.plans as { id: string; mayReturn?: boolean }[]).map((plan) => plan);
  expect(await listed(plansRoute.GET, "jonas")).toEqual([]);
  expect(await listed(plansRoute.GET, "ines")).toEqual([]);
  expect(await listed(archivedRoute.GET, "jonas")).toMatchObject([{ id, edition: 1, mayReturn: true }]);
  expect(await listed(archivedRoute.GET, "ines")).toMatchObject([{ id, mayReturn: false }]);
  expect(await listed(archivedRoute.GET, "marta")).toEqual([]);
  expect((await cardsNow()).numbers).toEqual([1]);
  expect((await archive("jonas", false)).status).toBe(200);
  expect(await listed(plansRoute.GET, "jonas")).toMatchObject([{ id }]);
  expect(listPlanEvents(s.db, id).map(({ kind }) => kind)).toEqual(expect.arrayContaining(["archived", "unarchived"]));
});

test("a plan that was never signed is deleted as ever", async () => {
  const draft = must(
    createPlan(s.app, s.people.jonas, { title: "A draft", lengthSeconds: 600, roomId: ROOMS.harbour }),
  );
  expect((await call(planRoute.DELETE, "DELETE", "jonas", { params: { id: draft.id } })).status).toBe(200);
});

test("only a lead withdraws, and only with a reason", async () => {
  const refused: readonly (readonly [Who | "device" | null, number])[] = [
    ["jonas", 403],
    ["marta", 404],
    ["sam", 404],
    ["petra", 404],
    ["device", 401],
    [null, 401],
  ];
  for (const [who, status] of refused) expect([who, (await withdraw(who)).status]).toEqual([who, status]);
  for (const reason of ["", "   ", "x".repeat(201), 7, undefined]) {
    expect((await withdraw("ines", reason ?? null)).status, String(reason).slice(0, 9)).toBe(422);
  }
  expect((await withdraw("ines", REASON, "2")).status).toBe(404);
  expect((await cardsNow()).numbers).toEqual([1]);
  expect((await withdraw("ines")).status).toBe(200);
  expect((await withdraw("ines")).body.error).toMatchObject({ code: "withdrawn-already" });
});

test("[INV-13] withdrawn: no card to start, the device keeps its own and the reason; a new sign-off is served again", async () => {
  const before = await cardsNow();
  expect(before.withdrawn).toEqual([]);
  must({ ok: true, value: await withdraw("ines") });
  const after = await cardsNow();
  expect(after.numbers).toEqual([]);
  expect(after.withdrawn).toMatchObject([{ planId: id, number: 1, byName: "Ines", reason: REASON }]);
  const card = await call(cardRoute.GET, "GET", "sam", { params: { planId: id, number: "1" } });
  expect(card).toMatchObject({ status: 409, body: { error: { code: "withdrawn" } } });

  // A device that has the card keeps it with the reason; one that has not gets none.
  const trust = { publicKey: s.app.keys.publicKey, now: s.app.now() };
  const kept = keepCards([], before.cards, trust).kept;
  expect(kept).toHaveLength(1);
  const list = after.withdrawn as Parameters<typeof keepCards>[3];
  expect(keepCards(kept, [], trust, list).kept).toEqual(kept);
  expect(keepCards([], [], trust, list).kept).toEqual([]);
  expect(keepCards(kept, [], trust).kept).toEqual([]);

  // The plan goes back to whoever wrote it; the month says what its slot has.
  expect(s.last(planDoc(id), "state")?.state).toMatchObject({ state: "handed-back", withdrawn: { reason: REASON } });
  expect(listPlanEvents(s.db, id).at(-1)).toMatchObject({ kind: "withdrawn", note: REASON });
  const slot = { id: "s1", date: "2026-12-01", time: "18:00", minutes: 60, theme: "", note: "" };
  const coming = [{ ...slot, coachId: null, roomId: null, planId: id }] as unknown as Parameters<
    typeof monthProblems
  >[0];
  const problems = () => monthProblems(coming, planSummaries(s.app, s.people.marta, [id]), "2026-11-29");
  expect(problems()).toMatchObject([
    { kind: "plan-withdrawn", message: `Edition 1 of "Pull & press" was withdrawn by Ines: ${REASON}` },
  ]);

  must(await handIn(s.app, s.people.jonas, id));
  const { hash } = must(await readForSignOff(s.app, s.people.ines, id));
  expect(must(await signPlan(s.app, s.people.ines, id, { hash })).edition).toBe(2);
  expect(await cardsNow()).toMatchObject({ numbers: [2], withdrawn: [{ number: 1 }] });
  expect(problems()).toEqual([]);
});

test("the database refuses to change, delete or replace a withdrawal, or one of no edition", async () => {
  await withdraw("ines");
  const raw = (sql: string) => () => s.db.raw.prepare(sql).run();
  expect(raw("UPDATE edition_withdrawal SET reason = 'none'")).toThrow("never changed");
  expect(raw("DELETE FROM edition_withdrawal")).toThrow("never deleted");
  expect(raw("INSERT OR REPLACE INTO edition_withdrawal SELECT * FROM edition_withdrawal")).toThrow("never replaced");
  expect(raw("DELETE FROM plan")).toThrow("never deleted");
  const made = { planId: id, number: 9, withdrawnBy: "x", withdrawnAt: 1, reason: "y" };
  expect(() => insertWithdrawal(s.db, made)).toThrow("no such edition");
});

test("two leads in the same second: one withdrawal, the other is told; a delete beside it takes nothing away", async () => {
  const all = await Promise.all([
    withdraw("ines", "one"),
    withdraw("ines", "other"),
    call(planRoute.DELETE, "DELETE", "jonas", { params: { id } }),
  ]);
  expect(all.map(({ status }) => status).sort()).toEqual([200, 409, 409]);
  expect((await cardsNow()).withdrawn).toHaveLength(1);
});
