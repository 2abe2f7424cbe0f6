/** [INV-12] Two people take a step of one month in the same second, over HTTP: one wins, the other is told in words. */
import { setTimeout as sleep } from "node:timers/promises";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import * as readRoute from "#app/api/programme/[month]/read/route.ts";
import * as signRoute from "#app/api/programme/[month]/sign/route.ts";
import { listMonthEditions } from "#db/repos/month-edition-repo.ts";
import { setRoles } from "#db/repos/people-repo.ts";
import { addMonths, daysOfMonth } from "#lib/calendar/days.ts";
import { sha256Hex } from "#lib/canonical/canonical.ts";
import { addSlot, changeSlot } from "#lib/programme/write.ts";
import { monthDoc } from "#server/context/live-documents.ts";
import { setSpringline } from "#server/context/springline.ts";
import { often } from "../support/long.ts";
import { openStudio, type PlanStudio, ROOMS, type Who } from "../support/plan-studio.ts";
import { type RouteHandler, type RouteServer, startRoutes } from "../support/route-server.ts";
import { signInAll } from "../support/sign-in.ts";

const RUNS = often(5, 200);
const MONTH = addMonths(new Date().toISOString().slice(0, 7), 1);
const DAYS = daysOfMonth(MONTH);

let s: PlanStudio;
let server: RouteServer;
let cookies: ReadonlyMap<Who, string>;

beforeAll(async () => {
  s = openStudio({ clock: Date.now() });
  setSpringline(s.app);
  setRoles(s.db, "petra", ["manager", "lead"]);
  cookies = await signInAll(s, ["ines", "petra"]);
  const params = Promise.resolve({ month: MONTH });
  const routes: Record<string, RouteHandler> = {
    [`POST /api/programme/${MONTH}/read`]: (request) => readRoute.POST(request, { params }),
    [`POST /api/programme/${MONTH}/sign`]: (request) => signRoute.POST(request, { params }),
  };
  server = await startRoutes({ env: { mode: "live", origin: s.app.env.origin, trustProxy: false }, routes });
  s.app.documents.transact(monthDoc(MONTH), "marta", (doc) => {
    const slot = { id: "one", date: DAYS[9] ?? "", start: "18:00", minutes: 45, room: ROOMS.harbour, coach: "marta" };
    addSlot({ doc, origin: "marta" }, slot, s.app.now());
  });
});
afterAll(async () => {
  await server.serving.close(0);
  setSpringline(undefined);
  await s.stop();
});

interface Answer {
  readonly status: number;
  readonly body: {
    readonly hash: string;
    readonly nextEdition: number;
    readonly error?: { readonly code: string; readonly message: string; readonly details?: { changes?: string[] } };
  };
}
async function send(who: Who, step: "read" | "sign", body: unknown = {}): Promise<Answer> {
  const headers = { "content-type": "application/json", origin: s.app.env.origin, cookie: cookies.get(who) ?? "" };
  const url = `${server.url}/api/programme/${MONTH}/${step}`;
  const answer = await fetch(url, { method: "POST", headers, body: JSON.stringify(body) });
  return { status: answer.status, body: await answer.json() };
}
async function readBy(who: Who) {
  const { body } = await send(who, "read");
  return { hash: body.hash, edition: body.nextEdition };
}

/** Both at once; in turn either has a start of some milliseconds. */
async function race<A, B>(run: number, one: () => Promise<A>, other: () => Promise<B>): Promise<[A, B]> {
  const late = async <T>(go: () => Promise<T>) => {
    await sleep((run % 7) * 4);
    return go();
  };
  return run % 2 === 0 ? Promise.all([one(), late(other)]) : Promise.all([late(one), other()]);
}
const move = async (run: number) => {
  s.advance(1);
  return s.app.documents.transact(monthDoc(MONTH), "marta", (doc) =>
    changeSlot({ doc, origin: "marta" }, "one", {
      date: DAYS[run % DAYS.length] ?? "",
      minutes: 30 + 5 * (Math.floor(run / DAYS.length) % 10),
    }),
  );
};
const editions = () => listMonthEditions(s.db, MONTH);

/** Every edition is numbered in turn and is what its hash says. */
function expectWhole(): void {
  expect(editions().map(({ number }) => number)).toEqual(editions().map((_, i) => i + 1));
  for (const { hash, fileJson } of editions()) expect(sha256Hex(fileJson)).toBe(hash);
}

describe(`${RUNS} times each`, () => {
  test("two leads sign: one does, the other is told who", { timeout: 300_000 }, async () => {
    for (let run = 0; run < RUNS; run++) {
      await move(run);
      const before = editions().length;
      const [one, other] = [await readBy("ines"), await readBy("petra")];
      const answers = await race(
        run,
        () => send("ines", "sign", one),
        () => send("petra", "sign", other),
      );
      expect(answers.map(({ status }) => status).sort()).toEqual([201, 409]);
      const error = answers.find(({ status }) => status === 409)?.body.error;
      const winner = answers[0].status === 201 ? "Ines" : "Petra";
      expect(error).toMatchObject({ code: "signed-meanwhile" });
      expect(error?.message).toMatch(new RegExp(`^${winner} signed this month meanwhile`));
      expect(editions()).toHaveLength(before + 1);
    }
    expectWhole();
  });

  test("somebody writes during the sign-off: what is signed is what was read, or nothing is", {
    timeout: 300_000,
  }, async () => {
    let refused = 0;
    for (let run = 0; run < RUNS; run++) {
      await move(2 * run + 5);
      const before = editions().length;
      const reading = await readBy("ines");
      const [signed] = await race(
        run,
        () => send("ines", "sign", reading),
        () => move(2 * run + 6),
      );
      if (signed.status === 201) expect(editions().at(-1)).toMatchObject({ hash: reading.hash });
      else {
        refused++;
        expect(signed).toMatchObject({ status: 409, body: { error: { code: "changed-since-read" } } });
        expect(signed.body.error?.details?.changes?.join(" ")).toMatch(/moved from|was \d+/);
      }
      expect(editions()).toHaveLength(before + (signed.status === 201 ? 1 : 0));
    }
    expect(refused).toBeGreaterThan(0);
    expectWhole();
  });
});
