/** Whose frames are worked through when: told by a clock of the test's own. */
import { expect, test } from "vitest";
import { FrameScheduler } from "#server/sync/frame-scheduler.ts";

const LIMITS = { turnMs: 25, personBurstMs: 400, personPercent: 20 };

class Socket {
  paused = 0;
  isPaused = false;
  pause(): void {
    this.paused++;
    this.isPaused = true;
  }
  resume(): void {
    this.isPaused = false;
  }
}

function studioPace() {
  let at = 0;
  const pace = new FrameScheduler(LIMITS, () => at);
  const done: string[] = [];
  const come = (user: string) => {
    const socket = new Socket();
    const lane = pace.lane(socket, user);
    const send = (what: string, ms: number) =>
      lane.take(() => {
        at += ms;
        done.push(what);
      });
    return { socket, lane, send };
  };
  const turn = () => new Promise((next) => setImmediate(next));
  return { pace, done, come, turn, now: () => at, pass: (ms: number) => (at += ms) };
}
const many = (count: number, send: (n: number) => void) => Array.from({ length: count }, (_, n) => send(n));

test("thirty sockets of one person keep another waiting for one turn's share, whichever come first", async () => {
  const h = studioPace();
  const loud = Array.from({ length: 30 }, () => h.come("jonas"));
  for (const [socket, { send }] of loud.entries()) many(5, (n) => send(`${socket}.${n}`, 10));
  const ines = h.come("ines");
  const asked = h.now();
  ines.send("hers", 1);
  while (!h.done.includes("hers")) await h.turn();
  expect(h.now() - asked).toBeLessThanOrEqual(LIMITS.turnMs + 10);
  expect(ines.socket.isPaused).toBe(false);
});

test("a frame that takes many turns' worth stands alone: the next one comes after as many turns", async () => {
  const h = studioPace();
  const [jonas, marta] = [h.come("jonas"), h.come("marta")];
  jonas.send("long", 100);
  marta.send("next", 1);
  let turns = 0;
  for (; !h.done.includes("next"); turns++) await h.turn();
  expect(turns).toBeGreaterThanOrEqual(4);
});

test("who has used up what a person may is read again once that is paid off; nothing is lost, all in order", async () => {
  const h = studioPace();
  const jonas = h.come("jonas");
  many(100, (n) => jonas.send(String(n), 10));
  while (h.now() < 500) await h.turn();
  for (let n = 0; n < 20; n++) await h.turn();
  // What was worked off in these 500 ms was paid off by a fifth of them meanwhile.
  expect(h.done).toHaveLength(50);
  expect(jonas.socket.isPaused).toBe(true);
  const another = h.come("jonas");
  another.send("with another socket", 1);
  await h.turn();
  expect(h.done).toHaveLength(50);
  // 1,000 ms of work: 400 at once, the rest at a fifth of the time.
  while (h.done.length < 101) {
    h.pass(50);
    await new Promise((next) => setTimeout(next, 1));
  }
  expect(h.now()).toBeGreaterThanOrEqual(2900);
  expect(h.done.filter((what) => !what.startsWith("with"))).toEqual(many(100, String));
  expect(jonas.socket.isPaused).toBe(false);
});

test("coming back makes nobody richer, and what a socket left behind goes with it", async () => {
  const h = studioPace();
  const jonas = h.come("jonas");
  many(70, (n) => jonas.send(String(n), 10));
  while (h.now() < 500) await h.turn();
  jonas.lane.end();
  const back = h.come("jonas");
  back.send("back", 1);
  for (let n = 0; n < 20; n++) await h.turn();
  expect(h.done).toEqual(many(50, String));
  while (!h.done.includes("back")) {
    h.pass(10);
    await new Promise((next) => setTimeout(next, 1));
  }
  expect(h.done).toEqual([...many(50, String), "back"]);
});

test("who writes as people do is never made to wait", async () => {
  const h = studioPace();
  const ines = h.come("ines");
  for (let n = 0; n < 500; n++) {
    ines.send(String(n), 2);
    h.pass(18);
    await h.turn();
  }
  expect(ines.socket.paused).toBe(0);
  expect(h.done).toHaveLength(500);
});

test("[INV-25] requests over HTTP share their person's time with the sockets, and keep nobody else waiting", async () => {
  const h = studioPace();
  const answered: string[] = [];
  const ask = (user: string, what: string, ms: number) =>
    h.pace
      .inTurn(user, () => {
        h.pass(ms);
        return what;
      })
      .then((said) => answered.push(said));
  const asked = [ask("jonas", "import 1", 300), ask("jonas", "import 2", 300), ask("jonas", "import 3", 300)];
  const jonas = h.come("jonas");
  jonas.send("frame", 1);
  for (let n = 0; n < 100; n++) await h.turn();
  // 600 ms of the 400 that he may: the rest waits until that is paid off, and his socket with it.
  expect(answered).toEqual(["import 1", "import 2"]);
  expect(h.done).toEqual([]);
  const from = h.now();
  asked.push(ask("ines", "hers", 1));
  for (let n = 0; n < 50 && !answered.includes("hers"); n++) await h.turn();
  expect(answered.at(-1)).toBe("hers");
  expect(h.now() - from).toBeLessThanOrEqual(LIMITS.turnMs);
  h.pass(10_000);
  await Promise.all(asked);
  expect(answered).toEqual(["import 1", "import 2", "hers", "import 3"]);
  await expect(
    h.pace.inTurn("ines", () => {
      throw new Error("broken");
    }),
  ).rejects.toThrow("broken");
});
