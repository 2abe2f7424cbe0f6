/**
 * Two to four people act, undo and redo at the same moments over a slow network that keeps the order of each connection.
 * Whatever they do, no value is lost: every value is one that somebody set in that place, nobody's undo overwrites what
 * another has set since, and everybody ends with the same document.
 */
import fc from "fast-check";
import { expect, test } from "vitest";
import type * as Y from "yjs";
import type { ActUndo } from "#lib/client/act-undo.ts";
import { act as asAct } from "#lib/doc/write.ts";
import { often } from "#tests/support/long.ts";
import { Network } from "./network.ts";
import { type Act, changed, type Kind, MONTH, PLAN, plainValues, Witness } from "./undo-pages.ts";

const SEED = 20_261_129;
const n = fc.nat({ max: 5000 });
const act: fc.Arbitrary<Act> = fc.record({ kind: n, on: n, to: n });
const way = fc.constantFrom("up" as const, "down" as const);
const step = fc.oneof(
  { weight: 9, arbitrary: fc.record({ t: fc.constant("act" as const), who: n, act }) },
  { weight: 7, arbitrary: fc.record({ t: fc.constant("undo" as const), who: n }) },
  { weight: 3, arbitrary: fc.record({ t: fc.constant("redo" as const), who: n }) },
  {
    weight: 6,
    arbitrary: fc.record({ t: fc.constant("deliver" as const), who: n, way }),
  },
  { weight: 1, arbitrary: fc.record({ t: fc.constant("disconnect" as const), who: n }) },
  { weight: 1, arbitrary: fc.record({ t: fc.constant("reconnect" as const), who: n }) },
  { weight: 2, arbitrary: fc.record({ t: fc.constant("flush" as const) }) },
);
type Step = typeof step extends fc.Arbitrary<infer T> ? T : never;

interface Page {
  readonly doc: Y.Doc;
  readonly undo: ActUndo;
  /** What this page's undo and redo last set in each place. */
  readonly left: Map<string, string | undefined>;
}
const seen = { acts: 0, undone: 0, redone: 0, stood: 0, inPart: 0, collisions: 0 };

class Game {
  readonly network: Network;
  readonly pages: readonly Page[];
  private readonly witness: Witness;
  private fresh = 100;
  private readonly kind: Kind;

  constructor(kind: Kind, people: number) {
    this.kind = kind;
    this.network = new Network(kind.start, people);
    this.pages = this.network.writers.map((doc) => {
      const undo = kind.undo({ doc, origin: "own" });
      return { doc, undo, left: new Map() };
    });
    this.witness = new Witness(plainValues(kind, this.network.hub));
  }

  take(s: Step): void {
    const { network } = this;
    if (s.t === "flush") network.flush();
    else if (s.t === "deliver") network.deliver(s.who, s.way, 0, false);
    else if (s.t === "disconnect") network.disconnect(s.who);
    else if (s.t === "reconnect") network.reconnect(s.who);
    else if (s.t === "act") this.act(s.who % this.pages.length, s.act);
    else this.takeBack(s.who % this.pages.length, s.t);
  }

  /** True when it was an undo step. */
  act(who: number, chosen: Act): boolean {
    const { doc, undo } = this.page(who);
    const before = plainValues(this.kind, doc);
    const steps = undo.manager.undoStack.length;
    const w = { doc, origin: "own" };
    const does = this.kind.acts[chosen.kind % this.kind.acts.length];
    undo.step(() => asAct(w, () => does?.(w, chosen, this.fresh++)));
    this.witness.saw(before, plainValues(this.kind, doc), who);
    seen.acts++;
    return undo.manager.undoStack.length > steps;
  }

  takeBack(who: number, back: "undo" | "redo"): void {
    const { doc, undo, left } = this.page(who);
    const before = plainValues(this.kind, doc);
    const { done, stood } = undo[back]();
    const after = plainValues(this.kind, doc);
    const differs = changed(before, after);
    for (const at of differs) {
      if (back === "undo") expect([at, this.witness.only(at, before.get(at)) ?? who]).toEqual([at, who]);
      // Putting back is redone over the taking out that another person's redo has restored.
      else if (!at.endsWith("/deleted")) expect([at, before.get(at)]).toEqual([at, left.get(at)]);
      left.set(at, after.get(at));
    }
    if (differs.length > 0) {
      expect(done).toBe(true);
      seen[back === "undo" ? "undone" : "redone"]++;
    }
    if (stood.length > 0) seen[done ? "inPart" : "stood"]++;
  }

  /** Everybody's copy, whether or not all of it has arrived. */
  expectGiven(): void {
    for (const doc of this.network.docs) {
      const values = plainValues(this.kind, doc);
      for (const [at, value] of values) {
        const mark = at.endsWith("/deleted") && value === "0";
        if (!mark && !this.witness.given(at, value)) expect.fail(`${at} is ${value}, which nobody set`);
      }
      for (const [id, map] of this.kind.entries(doc)) {
        const expected = map.get("kind") === "move" || this.kind === MONTH ? this.kind.required : [];
        for (const key of expected) if (!values.has(`${id}/${key}`)) expect.fail(`${id} has no ${key} any more`);
      }
    }
  }

  expectSame(): void {
    const [first, ...others] = this.network.docs.map((doc) => doc.toJSON());
    for (const other of others) expect(other).toEqual(first);
  }

  get values(): Map<string, string> {
    return plainValues(this.kind, this.network.hub);
  }

  end(): void {
    for (const { undo } of this.pages) undo.destroy();
  }

  private page(who: number): Page {
    return this.pages[who % this.pages.length] as Page;
  }
}

function play(kind: Kind, people: number, steps: readonly Step[]): void {
  const game = new Game(kind, people);
  // Reading a root for the first time creates it, so everybody gets all roots at the start.
  for (const doc of game.network.docs) plainValues(kind, doc);
  for (const s of steps) {
    game.take(s);
    game.expectGiven();
  }
  game.network.settle();
  game.expectGiven();
  game.expectSame();
  game.end();
}

const KINDS = { plan: PLAN, month: MONTH };
const CASES = [2, 3, 4].flatMap((people) => (["plan", "month"] as const).map((kind) => ({ kind, people })));

test.each(CASES)(
  "$people people in one $kind: no value is destroyed, and no one's later value is written over",
  (c) => {
    fc.assert(
      fc.property(fc.array(step, { minLength: 8, maxLength: 60, size: "max" }), (steps) =>
        play(KINDS[c.kind], c.people, steps),
      ),
      { seed: SEED + c.people, numRuns: often(30, 80) },
    );
  },
);

/** Compares with what was there; when making an item is undone, only its mark is left. */
const living = (values: ReadonlyMap<string, string>) => {
  const out = new Set([...values.keys()].filter((at) => at.endsWith("/deleted")).map((at) => at.split("/")[0]));
  return Object.fromEntries([...values].filter(([at]) => !out.has(at.split("/")[0])).sort());
};

test.each(["plan", "month"] as const)(
  "in one %s people act in turns and undo newest first: all is as at the start, and redo brings it back",
  (kind) => {
    const turns = fc.array(fc.record({ who: n, act }), { minLength: 1, maxLength: 14 });
    let undone = 0;
    fc.assert(
      fc.property(turns, (list) => {
        const game = new Game(KINDS[kind], 3);
        const start = living(game.values);
        const order: number[] = [];
        for (const { who, act: chosen } of list) {
          // An act that changes nothing is not an undo step.
          if (game.act(who % 3, chosen)) order.push(who % 3);
          game.network.flush();
        }
        const end = living(game.values);
        for (const who of [...order].reverse()) {
          game.takeBack(who, "undo");
          game.network.flush();
        }
        for (const who of [0, 1, 2]) expect(game.pages[who]?.undo.canUndo).toBe(false);
        expect(living(game.values)).toEqual(start);
        for (const who of order) {
          game.takeBack(who, "redo");
          game.network.flush();
        }
        expect(living(game.values)).toEqual(end);
        undone++;
        game.end();
      }),
      { seed: SEED, numRuns: often(30, 60) },
    );
    expect(undone).toBe(often(30, 60));
  },
);

test.each(["plan", "month"] as const)(
  "in one %s all set one thing at once and all undo, in any order: it is as at the start",
  (kind) => {
    const both = fc.record({
      people: fc.integer({ min: 2, max: 4 }),
      // Both kinds begin with acts on one entry: its time, its place.
      kind: fc.nat({ max: 3 }),
      tos: fc.array(n, { minLength: 4, maxLength: 4 }),
      after: fc.array(fc.record({ t: fc.constant("deliver" as const), who: n, way }), {
        maxLength: 30,
      }),
      met: fc.boolean(),
      order: fc.shuffledSubarray([0, 1, 2, 3], { minLength: 4 }),
    });
    fc.assert(
      fc.property(both, (c) => {
        const game = new Game(KINDS[kind], c.people);
        const start = game.values;
        for (let who = 0; who < c.people; who++) game.act(who, { kind: c.kind, on: 1, to: c.tos[who] ?? 0 });
        if (c.met) game.network.flush();
        const deliveries = [...c.after];
        for (const who of c.order.filter((p) => p < c.people)) {
          game.takeBack(who, "undo");
          for (const s of deliveries.splice(0, 5)) game.take(s);
        }
        game.network.settle();
        game.expectSame();
        expect(changed(start, game.values)).toEqual([]);
        seen.collisions++;
        game.end();
      }),
      { seed: SEED, numRuns: often(60, 150) },
    );
  },
);

test("the random runs did contain acts, conflicts and partial undos", () => {
  expect(seen.acts).toBeGreaterThan(often(1000, 3000));
  expect(seen.undone).toBeGreaterThan(often(500, 1500));
  expect(seen.redone).toBeGreaterThan(often(150, 500));
  expect(seen.stood).toBeGreaterThan(often(30, 100));
  expect(seen.inPart).toBeGreaterThan(often(1, 5));
  expect(seen.collisions).toBe(often(120, 300));
});
