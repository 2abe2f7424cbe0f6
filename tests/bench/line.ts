/**
 * How far apart the screens of a room are: the leader in this process, three followers each in one of its own, over real
 * sockets through the real server. All run on one machine, whose clock says how far apart they are. Beside them a peer
 * that takes the class to begin as it hears of it. The followers' way is then lengthened by a relay, unevenly, to look like
 * a studio's network on a bad day; the leader's is not, so that nothing cancels.
 */
import { type ChildProcess, fork } from "node:child_process";
import { type AddressInfo, connect, createServer, type Socket } from "node:net";
import { WebSocket } from "ws";
import { openLine } from "#lib/client/line-link.ts";
import { Dice } from "#tests/support/dice.ts";
import { classFrom } from "#tests/support/line-server.ts";
import { quantile } from "./timing.ts";

const TARGET_MS = 100;
const LOOKS = 200;
const EVERY_MS = 50;
const dice = new Dice(20261126);

interface Screen {
  readonly token: string;
}
interface Look {
  readonly at: number;
  readonly position: number;
  readonly peer: number;
}

export async function benchLine(): Promise<boolean> {
  const child = start("line-server.ts", []);
  const { url, screens } = await new Promise<{ url: string; screens: Screen[] }>((resolve, reject) => {
    child.once("message", (told) => resolve(told as { url: string; screens: Screen[] }));
    child.once("exit", () => reject(new Error("the server ended")));
  });
  try {
    const clean = await run(url, url, screens);
    say("one machine, no network between", clean);
    const relay = await relayTo(url, { there: [2, 60], back: [2, 20] });
    const bad = await run(url, relay.url, screens);
    say("way of 2-60 ms there, 2-20 ms back", bad);
    relay.close();
    const met = Math.max(clean.worst, bad.worst) <= TARGET_MS;
    console.log(`every follower within ${TARGET_MS} ms of the leader: ${met ? "met" : "MISSED"}`);
    return met;
  } finally {
    child.disconnect();
  }
}

interface Measured {
  readonly skews: Float64Array;
  readonly peers: Float64Array;
  readonly worst: number;
}

async function run(url: string, followersUrl: string, [coach, ...others]: readonly Screen[]): Promise<Measured> {
  const link = openLine({
    origin: url,
    token: coach?.token ?? "",
    view: "lead",
    WebSocket: WebSocket as unknown as typeof globalThis.WebSocket,
    onState: () => undefined,
  });
  const followers = others.map(({ token }) => lookOn(followersUrl, token));
  await Promise.all(followers.map(({ ready }) => ready));
  const began = performance.now();
  link.runs(classFrom(began));
  const looks = (await Promise.all(followers.map(({ done }) => done))).flat();
  link.runs("nothing");
  link.close();
  const zero = performance.timeOrigin + began;
  const skews = Float64Array.from(looks, ({ at, position }) => Math.abs(position - (at - zero))).sort();
  const peers = Float64Array.from(looks, ({ at, peer }) => Math.abs(peer - (at - zero))).sort();
  return { skews, peers, worst: skews.at(-1) ?? Number.NaN };
}

function lookOn(url: string, token: string): { ready: Promise<unknown>; done: Promise<Look[]> } {
  const looks: Look[] = [];
  const child = start("line-follower.ts", [url, token, String(EVERY_MS), String(LOOKS)]);
  const ready = new Promise((resolve) => child.once("message", resolve));
  child.on("message", (said) => typeof said === "object" && looks.push(said as Look));
  const done = new Promise<Look[]>((resolve, reject) => {
    child.once("disconnect", () => resolve(looks));
    child.once("error", reject);
  });
  return { ready, done };
}

const start = (file: string, args: readonly string[]): ChildProcess =>
  fork(new URL(file, import.meta.url), args, { execArgv: ["--import", "tsx"] });

function say(name: string, { skews, peers, worst }: Measured): void {
  const ms = (x: number) => x.toFixed(2);
  const [p50, p95, peer] = [quantile(skews, 0.5), quantile(skews, 0.95), quantile(peers, 0.5)];
  console.log(
    `${name}: ${skews.length} looks on 3 followers, p50 ${ms(p50)} ms, p95 ${ms(p95)} ms, most ${ms(worst)} ms; ` +
      `a peer that begins when it hears: p50 ${ms(peer)} ms, ${(peer / p50).toFixed(1)} times as far`,
  );
}

interface Way {
  readonly there: readonly [number, number];
  readonly back: readonly [number, number];
}

/** A relay that delays everything, each time differently, but keeps the order. */
async function relayTo(url: string, way: Way): Promise<{ url: string; close(): void }> {
  const port = Number(new URL(url).port);
  const sockets = new Set<Socket>();
  const server = createServer((near) => {
    const far = connect(port, "127.0.0.1");
    for (const socket of [near, far]) sockets.add(socket.setNoDelay(true).on("error", () => socket.destroy()));
    pass(near, far, way.there);
    pass(far, near, way.back);
  });
  await new Promise<void>((resolve) => server.listen(0, "127.0.0.1", resolve));
  return {
    url: `ws://127.0.0.1:${(server.address() as AddressInfo).port}`,
    close() {
      for (const socket of sockets) socket.destroy();
      server.close();
    },
  };
}

function pass(from: Socket, to: Socket, [least, most]: readonly [number, number]): void {
  let due = 0;
  from.on("data", (chunk: Buffer) => {
    due = Math.max(due, performance.now() + least + (dice.upTo(1001) / 1000) * (most - least));
    setTimeout(() => to.writable && to.write(chunk), due - performance.now());
  });
  from.on("close", () => to.destroy());
}
