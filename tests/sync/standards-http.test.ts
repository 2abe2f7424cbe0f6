/** Studio standards, readings and timings over HTTP with real sessions: a manager's is taken, everybody else's refused. */
import { afterEach, beforeEach, expect, test } from "vitest";
import * as readingsRoute from "#app/api/rooms/[id]/springs/[spring]/readings/route.ts";
import * as timingsRoute from "#app/api/rooms/[id]/timings/route.ts";
import * as taughtRoute from "#app/api/rooms/[id]/timings/taught/route.ts";
import * as standardRoute from "#app/api/standards/[rule]/route.ts";
import * as trialRoute from "#app/api/standards/[rule]/trial/route.ts";
import { readRoom } from "#db/repos/room-repo.ts";
import { readStudio } from "#db/repos/studio-repo.ts";
import { setSpringline } from "#server/context/springline.ts";
import { EQUIPMENT, openStudio, type PlanStudio, ROOMS, type Who } from "../support/plan-studio.ts";
import { signInAll } from "../support/sign-in.ts";

let s: PlanStudio;
let cookies: ReadonlyMap<Who, string>;
beforeEach(async () => {
  s = openStudio({ clock: Date.now() });
  setSpringline(s.app);
  cookies = await signInAll(s, ["petra", "ines", "marta"]);
});
afterEach(async () => {
  setSpringline(undefined);
  await s.stop();
});

type Route = (request: Request, context: { params: Promise<Record<string, string>> }) => Promise<Response>;
interface Call {
  readonly route: Route;
  readonly method: "PUT" | "POST";
  readonly params: Record<string, string>;
  readonly body?: unknown;
}

const sheet = {
  travelUnit: "cm",
  forceUnit: "N",
  readings: [100, 200, 300].map((mm) => ({ travelMm: mm, newtons: mm })),
};
const CALLS: Readonly<Record<string, Call>> = {
  level: {
    route: standardRoute.PUT,
    method: "PUT",
    params: { rule: "missing-cue" },
    body: { standard: { level: "off" }, seen: null },
  },
  back: {
    route: standardRoute.PUT,
    method: "PUT",
    params: { rule: "missing-cue" },
    body: { standard: null, seen: { level: "off" } },
  },
  trial: { route: trialRoute.POST, method: "POST", params: { rule: "missing-cue" }, body: { level: "off" } },
  timings: {
    route: timingsRoute.PUT,
    method: "PUT",
    params: { id: ROOMS.loft },
    body: { actionSeconds: { springOn: 9 }, everyRoom: true },
  },
  taught: {
    route: taughtRoute.POST,
    method: "POST",
    params: { id: ROOMS.loft },
    body: { take: { springOn: 9 } },
  },
  readings: {
    route: readingsRoute.PUT,
    method: "PUT",
    params: { id: ROOMS.loft, spring: "light" },
    body: { sheet, use: true, seen: { readingsAt: null, stiffnessNPerMm: 0.1, preloadN: 5 } },
  },
};

function send({ route, method, params, body }: Call, who: Who | null, origin = s.app.env.origin): Promise<Response> {
  const headers = new Headers({ origin, "content-type": "application/json" });
  const cookie = who && cookies.get(who);
  if (cookie) headers.set("cookie", cookie);
  const init = { method, headers, ...(body === undefined ? {} : { body: JSON.stringify(body) }) };
  return route(new Request(`${s.app.env.origin}/api`, init), { params: Promise.resolve(params) });
}
const codeOf = async (response: Response): Promise<string> =>
  response.ok ? "ok" : `${response.status} ${(await response.json()).error.code}`;
const untouched = () => [readStudio(s.db)?.standards, readRoom(s.db, ROOMS.loft)?.equipment];

test("every call is refused to a lead, a coach, nobody and another site's page, and changes nothing", async () => {
  const before = untouched();
  for (const call of Object.values(CALLS)) {
    expect(await codeOf(await send(call, "ines"))).toBe("403 no-right");
    expect(await codeOf(await send(call, "marta"))).toBe("403 no-right");
    expect(await codeOf(await send(call, null))).toBe("401 not-signed-in");
    expect(await codeOf(await send(call, "petra", "https://elsewhere.example"))).toBe("403 other-origin");
  }
  expect(untouched()).toEqual(before);
});

test("a manager's are taken; a body that is none is refused with its place", async () => {
  for (const [name, call] of Object.entries(CALLS)) {
    // No class was taught: there is nothing to take.
    const answer = name === "taught" ? "409 changed-meanwhile" : "ok";
    expect(await codeOf(await send(call, "petra")), name).toBe(answer);
  }
  expect(readStudio(s.db)?.standards).toEqual({});
  const { springs, actionSeconds } = readRoom(s.db, ROOMS.loft)?.equipment ?? EQUIPMENT;
  expect(actionSeconds).toEqual({ springOn: 9 });
  expect(springs[0]).toMatchObject({ stiffnessNPerMm: 1, preloadN: 0 });
  const wrong = (name: keyof typeof CALLS, body: unknown) => {
    const call = CALLS[name];
    if (!call) throw new Error("no such call");
    return send({ ...call, body }, "petra").then(codeOf);
  };
  expect(await wrong("level", { standard: { level: "loud" }, seen: null })).toBe("422 invalid");
  expect(await wrong("level", { standard: { level: "off" } })).toBe("422 invalid");
  expect(await wrong("level", { standard: { limits: { requiredKinds: ["song"] } }, seen: null })).toBe("422 bad-limit");
  expect(await wrong("level", { standard: { level: "off" }, seen: { level: "info" } })).toBe("409 changed-meanwhile");
  expect(await wrong("readings", { sheet, use: true })).toBe("422 invalid");
  expect(await codeOf(await send(CALLS.readings as Call, "petra"))).toBe("409 changed-meanwhile");
  expect(await wrong("timings", { actionSeconds: { springOn: -1 }, everyRoom: false })).toBe("422 invalid");
  expect(await wrong("taught", { take: {} })).toBe("422 invalid");
  expect(await wrong("readings", { sheet: { ...sheet, readings: [{ travelMm: 1, newtons: "2" }] }, use: false })).toBe(
    "422 invalid",
  );
});
