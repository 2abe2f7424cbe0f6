/** Floods of strangers, at the sockets' door and over HTTP: whoever writes inside loses nothing, and nobody waits. */
import { connect } from "node:net";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import type { WebSocket } from "ws";
import { CLOSE } from "#lib/protocol/close.ts";
import { MAX_BODY_BYTES } from "#server/http/body.ts";
import { LIMITS } from "#server/sync/limits.ts";
import { type Attacked, startAttacked, WAIT_MS } from "../support/attacked.ts";
import { eventually } from "../support/eventually.ts";
import { bareSocket } from "../support/flood.ts";
import { often } from "../support/long.ts";
import { PASSWORD } from "../support/sign-in.ts";

let server: Attacked;
beforeAll(async () => {
  server = await startAttacked();
}, 60_000);
afterAll(() => server.stop());

const MS = 700;
/** Runs `one` over and over, so many at once, for `MS`. Gives what each came to. */
async function without<T>(atOnce: number, one: (n: number) => Promise<T>): Promise<T[]> {
  const got: T[] = [];
  const until = performance.now() + MS;
  let n = 0;
  const lane = async () => {
    while (performance.now() < until) got.push(await one(n++));
  };
  await Promise.all(Array.from({ length: atOnce }, lane));
  return got;
}
const stays = async (attack: () => Promise<unknown>) => expect(await server.under(attack)).toBeLessThan(WAIT_MS);
/** Until a socket is closed, by whichever side. */
const closeOf = (ws: WebSocket) => new Promise<number>((done) => ws.once("close", done));

describe("at the sockets' door", () => {
  test("strangers come and are sent away, as fast as they can", () =>
    stays(async () => {
      const codes = await without(50, () => closeOf(bareSocket(server, "nobody")));
      expect(new Set(codes)).toEqual(new Set([CLOSE.notSignedIn.code]));
    }));

  test("handshakes that never end, and sockets that are gone before they begin", () =>
    stays(async () => {
      const { hostname, port } = new URL(server.url);
      await without(100, (n) => {
        const socket = connect(Number(port), hostname);
        socket.on("error", () => undefined);
        socket.write("GET /sync/plan/p HTTP/1.1\r\nHost: x\r\nUpgrade: websocket\r\nConnection: Upgrade\r\n");
        if (n % 2) socket.write("Sec-WebSocket-Version: 13\r\nSec-WebSocket-Key: bad\r\n\r\n");
        return new Promise<void>((done) => {
          socket.once("close", () => done());
          setTimeout(() => socket.destroy(), 20);
        });
      });
    }));

  test("one person opens sockets without end: so many are let in, and somebody else comes in beside them", () =>
    stays(async () => {
      const open: WebSocket[] = [];
      const codes: number[] = [];
      for (let n = 0; n < LIMITS.socketsOfPerson + 60; n++) {
        const ws = bareSocket(server, "jonas");
        ws.on("close", (code) => codes.push(code));
        open.push(ws);
      }
      await eventually("those beyond are closed", () => codes.length >= 60, 20_000);
      expect(new Set(codes)).toEqual(new Set([CLOSE.tooManyPages.code]));
      const sam = await server.page("sam").synced();
      sam.end();
      for (const ws of open) ws.terminate();
    }));

  test("one person comes and goes, as fast as the line allows", () =>
    stays(() =>
      without(30, () => {
        const ws = bareSocket(server, "jonas");
        ws.on("message", () => ws.terminate());
        return closeOf(ws);
      }),
    ));
});

describe("over HTTP", () => {
  const post = async (path: string, body: string, address: string) => {
    const headers = { "content-type": "application/json", origin: server.origin, "x-forwarded-for": address };
    const answer = await fetch(`${server.http}${path}`, { method: "POST", headers, body });
    await answer.arrayBuffer();
    return answer.status;
  };
  const signIn = (who: string, password: string, address: string) =>
    post("/api/auth/sign-in/email", JSON.stringify({ email: `${who}@tholepin.example`, password }), address);
  const anywhere = (n: number) => `198.51.${n % 200}.${(n >> 3) % 250}`;

  test("passwords of one account are guessed from everywhere; others sign in meanwhile", () =>
    stays(async () => {
      const guesses = without(often(16, 40), (n) => signIn("petra", "not the password", anywhere(n)));
      expect(await signIn("marta", PASSWORD, "203.0.113.9")).toBe(200);
      expect(new Set(await guesses)).toContain(429);
    }));

  test("passwords of as many accounts as there are guesses, from everywhere", () =>
    stays(async () => {
      const guesses = without(often(10, 30), (n) => signIn(`nobody-${n}`, "not the password", anywhere(n)));
      expect(await signIn("marta", PASSWORD, "203.0.113.9")).toBe(200);
      expect(new Set(await guesses)).toEqual(new Set([401]));
    }));

  test("pairing codes are guessed: the network that does is stopped, and the right code is taken from another", async () => {
    const pair = (code: string, address: string) => post("/api/devices/pair", JSON.stringify({ code }), address);
    let from = 0;
    await stays(async () => {
      const address = `203.0.113.${++from}`;
      const got = await without(20, () => pair("ABCDEFGH", address));
      expect(got.filter((status) => status === 404)).toHaveLength(20);
      expect(new Set(got)).toEqual(new Set([404, 429]));
      // Spread over many networks they are only refused, and use nothing up.
      await without(20, (n) => pair("ABCDEFGH", anywhere(n)));
    });
    expect(await pair(server.pairingCode, "203.0.113.99")).toBe(200);
  });

  test("large bodies of those who may not: refused before they are read", () =>
    stays(async () => {
      const large = "x".repeat(MAX_BODY_BYTES - 100);
      const sent = await without(8, (n) => post(n % 2 ? "/api/plans/import" : "/api/first-run", large, anywhere(n)));
      for (const status of sent) expect([401, 409]).toContain(status);
    }));

  test("methods and addresses that nobody has", () =>
    stays(() =>
      without(50, async (n) => {
        const path = n % 2 ? "api/nothing" : `api/${"a".repeat(9000)}`;
        const answer = await fetch(`${server.http}/${path}`, { method: n % 3 ? "GET" : "PROPFIND" });
        await answer.arrayBuffer();
        expect([400, 404, 405]).toContain(answer.status);
      }),
    ));
});
