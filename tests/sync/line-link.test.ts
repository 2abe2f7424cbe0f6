/** The page's own connection to the line: one clock on all screens, a network that fails, a server that is started again. */
import { afterEach, expect, test } from "vitest";
import type { LineLink } from "#lib/client/line-link.ts";
import { eventually } from "#tests/support/eventually.ts";
import { classFrom, type LineServer, linkTo, onLine, startLineServer } from "#tests/support/line-server.ts";

let server: LineServer;
const links: LineLink[] = [];
afterEach(async () => {
  for (const link of links.splice(0)) link.close();
  await server.stop();
});
const link = (...args: Parameters<typeof linkTo>): LineLink => {
  const made = linkTo(...args);
  links.push(made);
  return made;
};
/** A forward-only clock that counts from another moment than everybody else's. */
const clockFrom = (zero: number) => () => performance.now() + zero;
const startOf = (of: LineLink) => of.state.followed?.log[0]?.at ?? Number.NaN;
/** Seconds of the class on a screen, by its own clock. */
/** These clocks are real, and a busy machine may stand still between two looks; exact bounds are in `tests/reference/shared-clock.test.ts`. */
const HALF_A_SECOND = 0.5;
const secondsOn = (of: LineLink) => (of.classTime() - startOf(of)) / 1000;

test("two screens whose clocks know nothing of each other show the same moment of the class", async () => {
  server = await startLineServer();
  const now = clockFrom(5e8);
  const leader = link(server, server.pair("Tablet"), { now });
  const follower = link(server, server.pair("Wall"), { now: clockFrom(-3e8) });
  const began = now() - 90_000;
  leader.runs(classFrom(began));
  await eventually("the class is followed", () => follower.state.followed !== null);
  const [led, followed] = [(now() - began) / 1000, secondsOn(follower)];
  expect(Math.abs(followed - led)).toBeLessThan(HALF_A_SECOND);
  // In its own time the follower's log begins when the leader's did.
  const start = follower.toLocal(follower.state.followed?.log ?? [])[0]?.at ?? Number.NaN;
  expect(Math.abs(start + 3e8 - (began - 5e8))).toBeLessThan(1000 * HALF_A_SECOND);
});

test("the leader's acts reach the follower; stepping down ends it", async () => {
  server = await startLineServer();
  const leader = link(server, server.pair("Tablet"));
  const follower = link(server, server.pair("Wall"));
  const began = classFrom(performance.now() - 1000);
  leader.runs(began);
  await eventually("the class is followed", () => follower.state.followed !== null);
  leader.runs({ ...began, log: [...began.log, { type: "hold", at: performance.now() }] });
  await eventually("the hold is followed", () => follower.state.followed?.log.at(-1)?.type === "hold");
  leader.runs("nothing");
  await eventually("no class is followed", () => follower.state.followed === null);
  expect(follower.state.line?.leader).toBeNull();
});

test("a server that is started again gets the line back; the follower's second neither jumps nor stops", async () => {
  server = await startLineServer();
  const leader = link(server, server.pair("Tablet"));
  const follower = link(server, server.pair("Wall"));
  leader.runs(classFrom(performance.now() - 60_000));
  await eventually("the class is followed", () => follower.state.followed !== null);
  const apart = () => secondsOn(follower) - performance.now() / 1000;
  const before = apart();
  server.restart();
  let most = 0;
  await eventually("both are back, in the new run's time", () => {
    most = Math.max(most, Math.abs(apart() - before));
    return follower.state.contact === "on" && leader.state.contact === "on" && startOf(follower) > 1.5e6;
  });
  expect(most).toBeLessThan(HALF_A_SECOND);
  expect(Math.abs(apart() - before)).toBeLessThan(HALF_A_SECOND);
  expect(follower.state.line?.leader?.label).toBe("Tablet");
});

test("a follower that was cut off runs on and is back without a jump", async () => {
  server = await startLineServer();
  const leader = link(server, server.pair("Tablet"));
  const follower = link(server, server.pair("Wall"));
  leader.runs(classFrom(performance.now() - 60_000));
  await eventually("the class is followed", () => follower.state.followed !== null);
  const apart = () => secondsOn(follower) - performance.now() / 1000;
  const before = apart();
  follower.lose();
  expect(follower.state).toMatchObject({ contact: "off" });
  expect(follower.state.heardAt).not.toBeNull();
  expect(Math.abs(apart() - before)).toBeLessThan(HALF_A_SECOND);
  await eventually("it is back", () => follower.state.contact === "on");
  expect(Math.abs(apart() - before)).toBeLessThan(HALF_A_SECOND);
});

test("asked, and handed over: the new leader goes on with the same class, the old one is told", async () => {
  server = await startLineServer();
  const tablet = server.pair("Tablet");
  const wall = server.pair("Wall");
  const [leader, follower] = [link(server, tablet), link(server, wall)];
  leader.runs(classFrom(performance.now() - 60_000));
  follower.runs("nothing");
  await eventually("the class is followed", () => follower.state.followed !== null);
  follower.lead(false);
  await eventually("the leader is asked", () => leader.state.line?.asked?.label === "Wall");
  leader.answer(true);
  await eventually("the wall leads", () => follower.state.line?.leader?.id === wall.id);
  const taken = follower.state.followed;
  if (!taken) throw new Error("the class stays");
  follower.runs({ ...taken, log: [...follower.toLocal(taken.log)] as typeof taken.log });
  await eventually(
    "it is told in the new term",
    () => server.lineOf("loft").told !== null && leader.state.line?.term === 2,
  );
  expect(server.lineOf("loft").told?.session).toBe(taken.session);
  leader.runs("nothing");
  expect(server.lineOf("loft").leader?.id).toBe(wall.id);
});

test("a no is heard by who asked, and who asks while another does is told so", async () => {
  server = await startLineServer();
  const leader = link(server, server.pair("Tablet"));
  const [asker, late] = [link(server, server.pair("Wall")), link(server, server.pair("Crew"))];
  leader.runs(classFrom(performance.now()));
  await eventually("all know who leads", () => Boolean(asker.state.line?.leader && late.state.line?.leader));
  asker.lead(false);
  await eventually("it is asked", () => Boolean(leader.state.line?.asked && late.state.line?.asked));
  late.lead(false);
  await eventually("it is told", () => late.state.refusal === "asked-already");
  leader.answer(false);
  await eventually("the no is heard", () => asker.state.refusal === "declined");
  expect(leader.state.line).toMatchObject({ term: 1, asked: null });
});

test("a final close is a sentence, and nothing is tried again", async () => {
  server = await startLineServer();
  const screen = server.pair("Wall");
  const wall = link(server, screen);
  await eventually("it is on", () => wall.state.contact === "on");
  server.takeBack(screen);
  await eventually("it is refused", () => wall.state.contact === "refused");
  expect(wall.state.sentence).toContain("no longer paired");
  wall.retry();
  expect(wall.state.contact).toBe("refused");
  await onLine(server, server.pair("Other"));
});
