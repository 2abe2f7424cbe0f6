/** How often a password may be guessed, by raw requests over a real gate: wrong ones count, by account and by network. */
import { afterEach, beforeEach, describe, expect, test } from "vitest";
import * as authRoute from "#app/api/auth/[...all]/route.ts";
import { setSpringline } from "#server/context/springline.ts";
import { openStudio, type PlanStudio } from "../support/plan-studio.ts";
import { type RouteServer, startRoutes } from "../support/route-server.ts";
import { hashNothing, PASSWORD, signInAll } from "../support/sign-in.ts";

let s: PlanStudio;
let http: RouteServer;
const SIGN_IN = "/api/auth/sign-in/email";
const routes = { [`POST ${SIGN_IN}`]: authRoute.POST, "POST /api/auth/change-password": authRoute.POST };

async function start(change: { trustProxy?: boolean; origin?: string } = {}): Promise<void> {
  const env = { ...s.app.env, ...change };
  setSpringline({ ...s.app, env });
  http = await startRoutes({ env: { ...env, mode: "live" }, routes });
}

beforeEach(async () => {
  s = openStudio({ clock: Date.now() });
  await hashNothing(s);
  await signInAll(s, []);
});
afterEach(async () => {
  await http.serving.close(0);
  setSpringline(undefined);
  await s.stop();
});

interface From {
  /** What the proxy in front says of the address. */
  readonly address?: string;
  readonly cookie?: string;
  /** The studio's own when not given. */
  readonly origin?: string;
}

function post(path: string, body: object, from: From = {}): Promise<Response> {
  const headers: Record<string, string> = {
    "content-type": "application/json",
    origin: from.origin ?? s.app.env.origin,
  };
  if (from.address) headers["x-forwarded-for"] = from.address;
  if (from.cookie) headers.cookie = from.cookie;
  return fetch(`${http.url}${path}`, { method: "POST", headers, body: JSON.stringify(body) });
}
const signIn = (who: string, password: string, from?: From) =>
  post(SIGN_IN, { email: `${who}@tholepin.example`, password }, from);
const status = async (who: string, password: string, from?: From) => (await signIn(who, password, from)).status;

/** Wrong passwords one after the other; the statuses they got. */
async function guess(times: number, who: (n: number) => string, from: (n: number) => From): Promise<number[]> {
  const got: number[] = [];
  for (let n = 0; n < times; n++) got.push(await status(who(n), "not the password", from(n)));
  return got;
}
const cookieIn = (response: Response, name: string) =>
  response.headers
    .getSetCookie()
    .find((cookie) => cookie.includes(name))
    ?.split(";")[0] ?? "";
const V4 = (n: number) => ({ address: `198.51.100.${n + 1}` });
const SAME = () => ({ address: "203.0.113.7" });

describe("behind a proxy that is trusted", () => {
  beforeEach(() => start({ trustProxy: true }));

  test("guesses at one account from as many addresses are stopped after five, and the sentence says how long", async () => {
    expect(await guess(30, () => "petra", V4)).toEqual([...Array(5).fill(401), ...Array(25).fill(429)]);
    const refused = await signIn("petra", PASSWORD, V4(99));
    expect(refused.headers.get("retry-after")).toBe("30");
    expect((await refused.json()).error.message).toBe(
      "Too many wrong passwords for this email address. Wait 30 seconds and try again, or use a browser that has signed in with it before.",
    );
    // Others are not concerned, and what was turned away made the wait no longer.
    expect(await status("ines", PASSWORD, V4(1))).toBe(200);
    s.advance(30_000);
    expect(await status("petra", PASSWORD, V4(2))).toBe(200);
  });

  test("the wait doubles with each wrong guess, up to a quarter of an hour", async () => {
    await guess(5, () => "petra", V4);
    const waits: number[] = [];
    for (let n = 0; n < 7; n++) {
      waits.push(Number((await signIn("petra", PASSWORD, V4(n))).headers.get("retry-after")));
      s.advance((waits.at(-1) ?? 0) * 1000);
      expect(await status("petra", "not the password", V4(n))).toBe(401);
    }
    expect(waits).toEqual([30, 60, 120, 240, 480, 900, 900]);
  });

  test("many guesses at one moment are counted like many in a row", async () => {
    const asked = Array.from({ length: 20 }, (_, n) => status("petra", "not the password", V4(n)));
    expect((await Promise.all(asked)).sort()).toEqual([...Array(5).fill(401), ...Array(15).fill(429)]);
    const sprayed = Array.from({ length: 40 }, (_, n) => status(`nobody-${n}`, "not the password", SAME()));
    // Up to three more are under way when the twentieth is counted.
    expect((await Promise.all(sprayed)).filter((got) => got === 401).length).toBeLessThanOrEqual(23);
  });

  test("a network that guesses at one account after another is stopped; others are not", async () => {
    const got = await guess(22, (n) => `nobody-${n}`, SAME);
    expect(got).toEqual([...Array(20).fill(401), 429, 429]);
    expect(await status("ines", PASSWORD, { address: "203.0.113.8" })).toBe(200);
    // 64 bits of an IPv6 address are one network, however many addresses are used of it.
    const six = await guess(
      21,
      (n) => `six-${n}`,
      (n) => ({ address: `2001:db8:7:1:${n.toString(16)}::1` }),
    );
    expect(six.at(-1)).toBe(429);
    expect(await status("ines", PASSWORD, { address: "2001:db8:7:2::1" })).toBe(200);
    const mapped = await signIn("ines", PASSWORD, { address: "::ffff:203.0.113.7" });
    expect((await mapped.json()).error.message).toBe(
      "Too many wrong passwords from this network. Wait 5 seconds and try again.",
    );
  });

  test("right passwords never count, however many", async () => {
    const all = Array.from({ length: 30 }, (_, n) => status(n % 2 ? "ines" : "marta", PASSWORD, SAME()));
    expect(await Promise.all(all)).toEqual(Array(30).fill(200));
  });

  test("a browser that has signed in before is let in whatever strangers do to its account and its network", async () => {
    const cookie = cookieIn(await signIn("petra", PASSWORD, SAME()), "known_browser");
    await guess(6, () => "petra", V4);
    await guess(21, (n) => `nobody-${n}`, SAME);
    expect(await status("petra", PASSWORD, SAME())).toBe(429);
    expect(await status("petra", PASSWORD, { ...SAME(), cookie })).toBe(200);
    // It has a count of its own: whoever stole it may not guess for ever, and it helps with no other account.
    const stolen = await guess(
      6,
      () => "petra",
      () => ({ ...V4(7), cookie }),
    );
    expect(stolen).toEqual([...Array(5).fill(401), 429]);
    await guess(5, () => "ines", V4);
    expect(await status("ines", PASSWORD, { ...V4(9), cookie })).toBe(429);
  });

  test("the cookie is kept from scripts, lasts, and cannot be made up or moved to another account", async () => {
    const said = (await signIn("petra", PASSWORD)).headers.getSetCookie().find((one) => one.includes("known_browser"));
    expect(said).toMatch(
      /^springline\.known_browser=[\w-]{22}\.[\w-]{22}; Max-Age=34560000; Path=\/api; HttpOnly; SameSite=Lax$/,
    );
    const cookie = said?.split(";")[0] ?? "";
    await guess(5, () => "petra", V4);
    const last = cookie.at(-1) === "A" ? "B" : "A";
    expect(await status("petra", PASSWORD, { cookie: `${cookie.slice(0, -1)}${last}` })).toBe(429);
    expect(await status("petra", PASSWORD, { cookie })).toBe(200);
    // A shared tablet knows everybody who used it, one mark each.
    const shared = cookieIn(await signIn("ines", PASSWORD, { cookie }), "known_browser");
    expect(shared.split(".")).toHaveLength(4);
    expect(await status("petra", PASSWORD, { cookie: shared })).toBe(200);
  });

  test("an address of nobody is answered as one of somebody is: the waiting tells nothing", async () => {
    const told = async (who: string) => {
      await guess(5, () => who, V4);
      return (await signIn(who, "not the password", V4(50))).text();
    };
    expect(await told("nobody")).toBe(await told("petra"));
  });

  test("whoever took a session may not find out its password either, and its owner signs in all the same", async () => {
    const session = cookieIn(await signIn("petra", PASSWORD), "session_token");
    const change = (currentPassword: string) =>
      post(
        "/api/auth/change-password",
        { currentPassword, newPassword: "quite another password" },
        { cookie: session },
      );
    const got: number[] = [];
    for (let n = 0; n < 7; n++) got.push((await change("not the password")).status);
    expect(got).toEqual([...Array(5).fill(400), 429, 429]);
    expect(await status("petra", PASSWORD, V4(1))).toBe(200);
  });
});

describe("where all seem to come by one address", () => {
  interface Way {
    readonly how: string;
    readonly origin?: string;
    readonly address?: string;
  }
  const WAYS: readonly Way[] = [
    { how: "on the machine itself" },
    { how: "through a proxy that is not trusted", address: "203.0.113.7" },
    { how: "through a proxy with TLS that says nothing of addresses", origin: "https://plans.tholepin.example" },
  ];
  test.each(WAYS)("$how nobody is locked out by another's mistakes, and each account is guarded", async (way) => {
    await start(way.origin ? { origin: way.origin } : {});
    const from = { ...(way.address ? { address: way.address } : {}), origin: way.origin ?? s.app.env.origin };
    expect(
      await guess(
        8,
        () => "jonas",
        () => from,
      ),
    ).toEqual([...Array(5).fill(401), ...Array(3).fill(429)]);
    expect(
      await guess(
        25,
        (n) => `nobody-${n}`,
        () => from,
      ),
    ).toEqual(Array(25).fill(401));
    expect(await status("petra", PASSWORD, from)).toBe(200);
  });
});
