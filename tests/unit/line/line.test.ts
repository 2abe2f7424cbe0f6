/** The line of one room: who may lead when, worked by hand; and its laws for any interleaving of acts. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  ABSENT_MS,
  afterAct,
  EMPTY_LINE,
  FORGET_MS,
  isLeaderAbsent,
  type LineAct,
  leaderGoneFor,
  type RoomLine,
} from "#lib/line/line.ts";
import type { LineClass } from "#lib/line/messages.ts";

const WALL = Date.UTC(2026, 4, 4, 18);
type Bare = LineAct extends infer A ? (A extends LineAct ? Omit<A, "now" | "wall"> : never) : never;
const at = (now: number, act: Bare): LineAct => ({ ...act, now, wall: WALL + now }) as LineAct;
const screen = (id: string) => ({ id, label: `The ${id}`, view: "wall" as const });
const join = (id: string): Bare => ({ t: "join", screen: screen(id), memory: null });
const cls = (session: string): LineClass => ({
  session: session.padEnd(16, "0"),
  edition: { planId: "rows", number: 1, hash: "0".repeat(64) },
  title: "Rows",
  log: [{ type: "start", at: 0 }],
});

/** The line after acts one ms apart, and what was refused on the way. */
function lineAfter(acts: readonly Bare[], from: RoomLine = EMPTY_LINE, start = 0) {
  const refused: string[] = [];
  const line = acts.reduce((before, act, n) => {
    const outcome = afterAct(before, at(start + n, act));
    if (outcome.refused) refused.push(`${outcome.refused.to}: ${outcome.refused.why}`);
    return outcome.line;
  }, from);
  return { line, refused };
}
const led = lineAfter([
  join("tablet"),
  join("wall"),
  join("crew"),
  { t: "lead", id: "tablet", term: 0, sure: false },
]).line;

describe("who leads", () => {
  test("[INV-24] the first to begin leads, and only it moves the class", () => {
    expect(led).toMatchObject({ term: 1, leader: { id: "tablet", label: "The tablet", sinceWall: WALL + 3 } });
    const { line, refused } = lineAfter(
      [
        { t: "class", id: "tablet", term: 1, class: cls("a") },
        { t: "class", id: "wall", term: 1, class: cls("b") },
        { t: "class", id: "tablet", term: 0, class: cls("c") },
      ],
      led,
    );
    expect(line.told?.session).toBe(cls("a").session);
    expect(refused).toEqual(["wall: not-leading", "tablet: not-leading"]);
  });

  test("when two begin at the same moment, the second is told who leads", () => {
    const both = [join("a"), join("b")] as const;
    const lead = (id: string): Bare => ({ t: "lead", id, term: 0, sure: false });
    const { line, refused } = lineAfter([...both, lead("a"), lead("b")]);
    expect(line.leader?.id).toBe("a");
    expect(line.asked).toBeNull();
    expect(refused).toEqual(["b: changed"]);
  });

  test("asking changes nothing before the leader agrees; the class is handed over too", () => {
    const told = lineAfter([{ t: "class", id: "tablet", term: 1, class: cls("a") }], led).line;
    const asked = lineAfter([{ t: "lead", id: "wall", term: 1, sure: true }], told).line;
    expect(asked).toMatchObject({ term: 1, leader: { id: "tablet" }, asked: { id: "wall", label: "The wall" } });
    expect(lineAfter([{ t: "lead", id: "crew", term: 1, sure: false }], asked).refused).toEqual([
      "crew: asked-already",
    ]);
    const no = lineAfter([{ t: "answer", id: "tablet", term: 1, to: "wall", yes: false }], asked);
    expect(no.line).toMatchObject({ term: 1, leader: { id: "tablet" }, asked: null });
    expect(no.refused).toEqual(["wall: declined"]);
    const yes = lineAfter([{ t: "answer", id: "tablet", term: 1, to: "wall", yes: true }], asked).line;
    expect(yes).toMatchObject({ term: 2, leader: { id: "wall" }, asked: null, told: told.told });
    // What the tablet sends with its old term no longer counts.
    expect(lineAfter([{ t: "class", id: "tablet", term: 1, class: cls("b") }], yes).refused).toEqual([
      "tablet: not-leading",
    ]);
  });

  test("agreeing to a request that was withdrawn, or to another screen's, hands nothing over", () => {
    const asked = lineAfter([{ t: "lead", id: "wall", term: 1, sure: false }], led).line;
    for (const gone of [{ t: "withdraw", id: "wall" } as const, { t: "leave", id: "wall", lost: true } as const]) {
      const late = lineAfter([gone, { t: "answer", id: "tablet", term: 1, to: "wall", yes: true }], asked);
      expect(late.line.leader?.id).toBe("tablet");
      expect(late.refused).toEqual(["tablet: nobody-asks"]);
    }
    expect(lineAfter([{ t: "answer", id: "crew", term: 1, to: "wall", yes: true }], asked).refused).toEqual([
      "crew: not-leading",
    ]);
  });

  test("a leader gone for twenty seconds is replaced, once, by a screen that confirms", () => {
    const gone = lineAfter([{ t: "leave", id: "tablet", lost: true }], led, 100).line;
    const lead = (id: string, sure: boolean): Bare => ({ t: "lead", id, term: 1, sure });
    expect(lineAfter([lead("wall", true)], gone, 100 + ABSENT_MS - 1).line.leader?.id).toBe("tablet");
    expect(lineAfter([lead("wall", false)], gone, 100 + ABSENT_MS).line.leader?.id).toBe("tablet");
    expect(leaderGoneFor(gone, 5100)).toBe(5000);
    expect(isLeaderAbsent(gone, 100 + ABSENT_MS)).toBe(true);
    const both = lineAfter([lead("wall", true), lead("crew", true)], gone, 100 + ABSENT_MS);
    expect(both.line).toMatchObject({ term: 2, leader: { id: "wall" } });
    expect(both.refused).toEqual(["crew: changed"]);
    // The old leader comes back and finds that it no longer leads.
    const back = lineAfter(
      [join("tablet"), { t: "class", id: "tablet", term: 1, class: cls("x") }],
      both.line,
      200_000,
    );
    expect(back.line.leader?.id).toBe("wall");
    expect(back.refused).toEqual(["tablet: not-leading"]);
  });

  test("a reloaded page still leads", () => {
    const back = lineAfter([{ t: "leave", id: "tablet", lost: false }, join("tablet")], led, 100).line;
    expect(back).toMatchObject({ term: 1, leader: { id: "tablet" } });
    expect(leaderGoneFor(back, 1e6)).toBeNull();
  });

  test("after ten minutes without its leader nobody leads, and the class stays for screens that run on", () => {
    const told = lineAfter([{ t: "class", id: "tablet", term: 1, class: cls("a") }], led).line;
    const gone = lineAfter([{ t: "leave", id: "tablet", lost: true }], told, 100).line;
    expect(lineAfter([{ t: "tick" }], gone, 100 + FORGET_MS - 1).line).toBe(gone);
    const forgotten = lineAfter([{ t: "tick" }], gone, 100 + FORGET_MS).line;
    expect(forgotten).toMatchObject({ term: 2, leader: null, told: told.told });
    expect(forgotten.screens.map(({ id }) => id)).toEqual(["wall", "crew"]);
  });

  test("a leader that leaves after the end of its class frees the room", () => {
    const ended = { ...cls("a"), log: [...cls("a").log, { type: "end" as const, at: 9 }] };
    const told = lineAfter([{ t: "class", id: "tablet", term: 1, class: ended }], led).line;
    expect(told.leader?.id).toBe("tablet");
    const gone = lineAfter([{ t: "leave", id: "tablet", lost: false }], told, 100).line;
    expect(gone).toMatchObject({ term: 2, leader: null, told: null });
    expect(gone.screens.map(({ id }) => id)).toEqual(["wall", "crew"]);
    expect(lineAfter([{ t: "lead", id: "crew", term: 2, sure: false }], gone, 101).line.leader?.id).toBe("crew");
  });

  test("stepping down ends the class on the line", () => {
    const told = lineAfter([{ t: "class", id: "tablet", term: 1, class: cls("a") }], led).line;
    expect(lineAfter([{ t: "step-down", id: "wall", term: 1 }], told).line.told).not.toBeNull();
    expect(lineAfter([{ t: "step-down", id: "tablet", term: 1 }], told).line).toMatchObject({
      term: 2,
      leader: null,
      told: null,
    });
  });
});

describe("a restarted server", () => {
  const memory = (term: number, id: string) => ({ term, leader: { id, label: `The ${id}`, sinceWall: WALL } });
  const joins = (id: string, m: ReturnType<typeof memory>): Bare => ({ t: "join", screen: screen(id), memory: m });

  test("restores the line from what screens remember, by the latest term", () => {
    const line = lineAfter([joins("wall", memory(3, "tablet")), joins("crew", memory(4, "demo")), join("late")]).line;
    expect(line).toMatchObject({ term: 4, leader: { id: "demo", sinceWall: WALL } });
    // Nobody can begin meanwhile: the room waits for the leader.
    expect(lineAfter([{ t: "lead", id: "late", term: 4, sure: true }], line).line.leader?.id).toBe("demo");
    const back = lineAfter(
      [joins("demo", memory(4, "demo")), { t: "class", id: "demo", term: 4, class: cls("a") }],
      line,
    );
    expect(back.refused).toEqual([]);
    expect(back.line.remembered).toBe(false);
  });

  test("ignores a term beyond any real one, and uses the studio's name for the leader", () => {
    const line = lineAfter([joins("liar", memory(1_000_000_000, "liar")), joins("wall", memory(3, "tablet"))]).line;
    expect(line).toMatchObject({ term: 3, leader: { id: "tablet" } });
    const named = { ...memory(4, "demo"), leader: { id: "demo", label: "Coach's tablet", sinceWall: WALL } };
    expect(lineAfter([joins("demo", named)]).line.leader?.label).toBe("The demo");
  });

  test("ignores memories once something was done on the line", () => {
    const line = lineAfter([joins("liar", memory(900, "liar"))], led).line;
    expect(line).toMatchObject({ term: 1, leader: { id: "tablet" } });
  });
});

/** What screens may do in any order, with right, old or made-up terms. */
const IDS = ["a", "b", "c", "d"];
const idArb = fc.constantFrom(...IDS);
/** Terms behind the current one: mostly none. */
const termArb = fc.constantFrom(0, 0, 0, 0, 0, 1, 2, -1);
const memoryArb = fc.option(
  fc.record({ term: fc.integer({ min: 0, max: 6 }), leader: idArb.map((id) => ({ id, label: id, sinceWall: 0 })) }),
);
/** Some of the classes have ended. */
const toldArb = fc.tuple(idArb.map(cls), fc.integer({ min: 0, max: 4 })).map(([is, n]) => ({
  ...is,
  log: n === 0 ? [...is.log, { type: "end" as const, at: 1 }] : is.log,
}));
const bareArb: fc.Arbitrary<Bare> = fc.oneof(
  fc.record({ t: fc.constant("join" as const), screen: idArb.map(screen), memory: memoryArb }),
  fc.record({ t: fc.constant("leave" as const), id: idArb, lost: fc.boolean() }),
  fc.record({ t: fc.constant("lead" as const), id: idArb, term: termArb, sure: fc.boolean() }),
  fc.record({ t: fc.constant("withdraw" as const), id: idArb }),
  fc.record({ t: fc.constant("answer" as const), id: idArb, term: termArb, to: idArb, yes: fc.boolean() }),
  fc.record({ t: fc.constant("class" as const), id: idArb, term: termArb, class: toldArb }),
  fc.record({ t: fc.constant("step-down" as const), id: idArb, term: termArb }),
  fc.constant({ t: "tick" as const }),
);
const stepArb = fc.record({
  act: bareArb,
  wait: fc.constantFrom(...Array(16).fill(1), 500, ABSENT_MS, ABSENT_MS, FORGET_MS),
});
/** The act with its term relative to the line's; half of the answers are the leader's to the screen that asks. */
function from(act: Bare, { term, leader, asked }: RoomLine): Bare {
  const is = "term" in act ? { ...act, term: Math.max(0, term - act.term) } : act;
  const right = is.t === "answer" && is.to < "c" && leader && asked;
  return right ? { ...is, id: leader.id, to: asked.id } : is;
}

test("whatever screens do: one leader per term, no term twice, nobody leads without asking, only the leader sends the class", () => {
  const seen = { begun: 0, taken: 0, given: 0, told: 0 };
  fc.assert(
    fc.property(fc.array(stepArb, { minLength: 40, maxLength: 80 }), (steps) => {
      let line = EMPTY_LINE;
      let now = 0;
      const leaderOf = new Map<number, string>();
      for (const { act: chosen, wait } of steps) {
        const act = from(chosen, line);
        now += wait;
        const before = afterAct(line, at(now, { t: "tick" })).line;
        const { line: next, refused } = afterAct(line, at(now, act));
        expect(next.term).toBeGreaterThanOrEqual(line.term);
        const known = leaderOf.get(next.term);
        if (next.leader && known !== undefined) expect(next.leader.id).toBe(known);
        if (next.leader && !next.remembered) leaderOf.set(next.term, next.leader.id);
        if (next.leader && next.leader.id !== before.leader?.id && act.t !== "join") {
          expect(next.term).toBe(before.term + 1);
          const begun = act.t === "lead" && act.id === next.leader.id && before.leader === null;
          const taken = act.t === "lead" && act.id === next.leader.id && act.sure && isLeaderAbsent(before, now);
          const given = act.t === "answer" && act.yes && act.id === before.leader?.id && before.asked?.id === act.to;
          expect(begun || taken || given).toBe(true);
          seen[begun ? "begun" : taken ? "taken" : "given"]++;
        }
        if (act.t === "class" && !refused) {
          seen.told++;
          expect([before.leader?.id, before.term]).toEqual([act.id, act.term]);
          expect(next.told).toBe(act.class);
        } else if (act.t !== "step-down") {
          const over = act.t === "leave" && before.leader?.id === act.id && line.told?.log.at(-1)?.type === "end";
          expect(next.told).toBe(over ? null : line.told);
        }
        if (next.asked) expect(next.screens.some((s) => s.id === next.asked?.id && s.goneSince === null)).toBe(true);
        expect(new Set(next.screens.map((s) => s.id)).size).toBe(next.screens.length);
        line = next;
      }
    }),
    { numRuns: 250, seed: 20261126 },
  );
  // The runs covered every way of becoming leader, and classes were sent.
  expect(Math.min(...Object.values(seen))).toBeGreaterThan(5);
});
