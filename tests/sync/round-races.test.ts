/** [INV-27] [INV-12] Two people take a step of one plan in the same second, over HTTP: one wins, the other is told in words. */
import { setTimeout as sleep } from "node:timers/promises";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import * as handBackRoute from "#app/api/plans/[id]/hand-back/route.ts";
import * as handInRoute from "#app/api/plans/[id]/hand-in/route.ts";
import * as readRoute from "#app/api/plans/[id]/read/route.ts";
import * as signRoute from "#app/api/plans/[id]/sign/route.ts";
import * as takeBackRoute from "#app/api/plans/[id]/take-back/route.ts";
import * as takeUpRoute from "#app/api/plans/[id]/take-up/route.ts";
import { listEditions, readEditionText } from "#db/repos/edition-repo.ts";
import { listPlanEvents } from "#db/repos/event-repo.ts";
import { listMoments } from "#db/repos/moment-repo.ts";
import { setRoles } from "#db/repos/people-repo.ts";
import { readPlanRow } from "#db/repos/plan-repo.ts";
import { listRounds } from "#db/repos/round-repo.ts";
import { sha256Hex } from "#lib/canonical/canonical.ts";
import { setItemField } from "#lib/doc/write.ts";
import { planDoc } from "#server/context/live-documents.ts";
import { setSpringline } from "#server/context/springline.ts";
import { createPlan } from "#server/plans/create-plan.ts";
import { exportPlan } from "#server/plans/export-plan.ts";
import { importPlan } from "#server/plans/import-plan.ts";
import { writeGoodClass } from "../support/good-class.ts";
import { often } from "../support/long.ts";
import { must, openStudio, type PlanStudio, ROOMS, type Who } from "../support/plan-studio.ts";
import { type RouteHandler, type RouteServer, startRoutes } from "../support/route-server.ts";
import { signInAll } from "../support/sign-in.ts";

const RUNS = often(5, 200);
const LEADS = ["ines", "petra"] as const;

let s: PlanStudio;
let server: RouteServer;
let cookies: ReadonlyMap<Who, string>;
let file: unknown;
const routes: Record<string, RouteHandler> = {};

beforeAll(async () => {
  s = openStudio({ clock: Date.now() });
  setSpringline(s.app);
  setRoles(s.db, "petra", ["manager", "lead"]);
  cookies = await signInAll(s, ["jonas", ...LEADS]);
  server = await startRoutes({ env: { mode: "live", origin: s.app.env.origin, trustProxy: false }, routes });
  const { jonas, marta } = s.people;
  const made = must(createPlan(s.app, jonas, { title: "Rows", lengthSeconds: 600, roomId: ROOMS.harbour }));
  await writeGoodClass(s, planDoc(made.id), [jonas, marta]);
  file = must(exportPlan(s.app, jonas, made.id));
});
afterAll(async () => {
  await server.serving.close(0);
  setSpringline(undefined);
  await s.stop();
});

const STEPS = {
  "hand-in": handInRoute,
  "hand-back": handBackRoute,
  "take-back": takeBackRoute,
  "take-up": takeUpRoute,
  read: readRoute,
  sign: signRoute,
} as const;

interface Answer {
  readonly status: number;
  readonly body: { readonly hash?: string; readonly error?: { readonly code: string; readonly message: string } };
}

async function send(who: Who, id: string, step: keyof typeof STEPS, body: unknown = {}): Promise<Answer> {
  const headers = { "content-type": "application/json", origin: s.app.env.origin, cookie: cookies.get(who) ?? "" };
  const url = `${server.url}/api/plans/${id}/${step}`;
  const answer = await fetch(url, { method: "POST", headers, body: JSON.stringify(body) });
  return { status: answer.status, body: await answer.json() };
}

/** A plan of Jonas's that is offered for reading. */
async function offered(): Promise<string> {
  const { id } = must(importPlan(s.app, s.people.jonas, file));
  const params = Promise.resolve({ id });
  for (const [step, { POST }] of Object.entries(STEPS)) {
    routes[`POST /api/plans/${id}/${step}`] = (request) => POST(request, { params });
  }
  expect(await send("jonas", id, "hand-in")).toMatchObject({ status: 200 });
  return id;
}
const readBy = async (who: Who, id: string): Promise<string> => (await send(who, id, "read")).body.hash ?? "";

/** Both at once; in turn either has a start of some milliseconds. */
async function race<A, B>(run: number, one: () => Promise<A>, other: () => Promise<B>): Promise<[A, B]> {
  const start = (run % 7) * 4;
  const late = async <T>(go: () => Promise<T>) => {
    await sleep(start);
    return go();
  };
  return run % 2 === 0 ? Promise.all([one(), late(other)]) : Promise.all([late(one), other()]);
}

/** One won, the other was refused with a sentence; answers the code of the refusal. */
function oneWon(answers: readonly Answer[]): string {
  expect(answers.map(({ status }) => status).sort()).toEqual([200, 409]);
  const error = answers.find(({ status }) => status === 409)?.body.error;
  expect(error?.message).toMatch(/^[A-Z].*\.$/);
  return error?.code ?? "";
}

const STATE_OF = { returned: "handed-back", signed: "signed-off", "taken-back": "in-writing" } as const;
const EVENT_OF = { returned: "handed-back", signed: "signed-off", "taken-back": "taken-back" } as const;

/** State, round, moments, record and editions of a plan tell one story. */
function expectWhole(id: string): void {
  const rounds = listRounds(s.db, id);
  const moments = listMoments(s.db, id);
  const last = rounds.at(-1);
  expect(readPlanRow(s.db, id)?.state).toBe(last?.outcome ? STATE_OF[last.outcome] : "handed-in");
  expect(moments.map(({ round, kind }) => [round, kind])).toEqual(
    rounds.flatMap(({ number, outcome }) => [[number, "offered"], ...(outcome ? [[number, outcome]] : [])]),
  );
  const events = listPlanEvents(s.db, id).map(({ kind }) => kind);
  expect(events.slice(1)).toEqual(
    rounds.flatMap(({ outcome }) => ["handed-in", ...(outcome ? [EVENT_OF[outcome]] : [])]),
  );
  const signed = rounds.filter(({ outcome }) => outcome === "signed");
  expect(listEditions(s.db, id).map(({ number, round }) => [number, round])).toEqual(
    signed.map(({ number, edition }) => [edition, number]).reverse(),
  );
  for (const { number, hash } of listEditions(s.db, id)) {
    expect(sha256Hex(readEditionText(s.db, id, number)?.planJson ?? "")).toBe(hash);
  }
}

describe(`${RUNS} times each`, () => {
  test("two leads sign", { timeout: 300_000 }, async () => {
    for (let run = 0; run < RUNS; run++) {
      const id = await offered();
      const [one, other] = [await readBy("ines", id), await readBy("petra", id)];
      const sign = (who: Who, hash: string) => () => send(who, id, "sign", { hash });
      expect(oneWon(await race(run, sign("ines", one), sign("petra", other)))).toBe("not-handed-in");
      expect(listEditions(s.db, id)).toHaveLength(1);
      expectWhole(id);
    }
  });

  test("the trainee writes during the sign-off: what is signed is what was read, or nothing is", {
    timeout: 300_000,
  }, async () => {
    for (let run = 0; run < RUNS; run++) {
      const id = await offered();
      const hash = await readBy("ines", id);
      const write = async () =>
        s.app.documents.transact(planDoc(id), "jonas", (doc) =>
          setItemField({ doc, origin: "jonas" }, "m1", "seconds", 105),
        );
      const [signed] = await race(run, () => send("ines", id, "sign", { hash }), write);
      if (signed.status === 200) expect(listEditions(s.db, id)).toMatchObject([{ hash }]);
      else expect(signed).toMatchObject({ status: 409, body: { error: { code: "changed-since-read" } } });
      await s.app.checks.idle();
      const state = readPlanRow(s.db, id)?.state;
      expect(["handed-in", "signed-off", "in-writing"]).toContain(state);
      expect(listRounds(s.db, id)).toMatchObject([{ outcome: signed.status === 200 ? "signed" : null }]);
    }
  });

  test("one lead returns it while another signs", { timeout: 300_000 }, async () => {
    for (let run = 0; run < RUNS; run++) {
      const id = await offered();
      const hash = await readBy("ines", id);
      const back = () => send("petra", id, "hand-back", { note: "Slower", mainPoints: ["One voice"] });
      const code = oneWon(await race(run, () => send("ines", id, "sign", { hash }), back));
      expect(["not-handed-in", "wrong-state"]).toContain(code);
      expectWhole(id);
    }
  });

  test("the trainee takes it back while a lead signs", { timeout: 300_000 }, async () => {
    for (let run = 0; run < RUNS; run++) {
      const id = await offered();
      const hash = await readBy("ines", id);
      const code = oneWon(
        await race(
          run,
          () => send("ines", id, "sign", { hash }),
          () => send("jonas", id, "take-back"),
        ),
      );
      expect(["not-handed-in", "wrong-state"]).toContain(code);
      expectWhole(id);
    }
  });

  test("two leads take it up, and two take it over from a third", { timeout: 300_000 }, async () => {
    for (let run = 0; run < RUNS; run++) {
      const id = await offered();
      const up = (who: Who) => () => send(who, id, "take-up", { on: true });
      const answers = await race(run, up("ines"), up("petra"));
      expect(oneWon(answers)).toBe("being-read");
      const winner = LEADS[answers.findIndex(({ status }) => status === 200)];
      expect(listRounds(s.db, id)).toMatchObject([{ readerId: winner }]);
      const loser = LEADS.find((who) => who !== winner) ?? "ines";
      // The loser takes it over while the winner lets it go: whichever comes first, nobody else reads it than was answered.
      const [over, gone] = await race(
        run,
        () => send(loser, id, "take-up", { on: true, from: winner }),
        () => send(winner ?? "ines", id, "take-up", { on: false }),
      );
      const reader = listRounds(s.db, id)[0]?.readerId;
      expect([over.status, gone.status, reader]).toEqual(over.status === 200 ? [200, 409, loser] : [409, 200, null]);
      expectWhole(id);
    }
  });
});
