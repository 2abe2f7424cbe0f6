/**
 * Two to four writers over a network that loses, duplicates and reorders: everybody always ends with the same
 * plan, nothing typed is lost, and nothing that was moved appears twice. A failure prints its seed and its acts.
 */
import fc from "fast-check";
import { expect, test } from "vitest";
import * as Y from "yjs";
import { createPlanDoc } from "#lib/doc/create.ts";
import { tieOf } from "#lib/plan/ties.ts";
import { expectConverged, readAll } from "#tests/support/converge.ts";
import { often } from "#tests/support/long.ts";
import { SMALL_PLAN } from "#tests/support/sync-server.ts";
import { ACT_KINDS, type Act, doAct, Ledger } from "./acts.ts";
import { Network } from "./network.ts";

const SEED = 20_261_125;
/** For each number of writers. */
const RUNS = often(33, 110);
const n = fc.nat({ max: 5000 });
const way = fc.constantFrom("up" as const, "down" as const);
const act: fc.Arbitrary<Act> = fc.record({ kind: fc.nat({ max: ACT_KINDS - 1 }), on: n, to: n });
const step = fc.oneof(
  { weight: 10, arbitrary: fc.record({ t: fc.constant("act" as const), who: n, act }) },
  {
    weight: 6,
    arbitrary: fc.record({ t: fc.constant("deliver" as const), who: n, way, pick: n, again: fc.boolean() }),
  },
  { weight: 1, arbitrary: fc.record({ t: fc.constant("drop" as const), who: n, way, pick: n }) },
  { weight: 1, arbitrary: fc.record({ t: fc.constant("disconnect" as const), who: n }) },
  { weight: 1, arbitrary: fc.record({ t: fc.constant("reconnect" as const), who: n }) },
  { weight: 1, arbitrary: fc.record({ t: fc.constant("flush" as const) }) },
);
type Step = typeof step extends fc.Arbitrary<infer T> ? T : never;

/** The same start for everybody, made once, as on the server. */
const start = (() => {
  const doc = createPlanDoc(SMALL_PLAN, { carry: true });
  return Y.encodeStateAsUpdate(doc);
})();

/** Whatever was set, tied, taken out or put back: an item comes after existing items only, each once, never itself. */
function expectHoldsSound(doc: Y.Doc): void {
  const { items } = readAll(doc).plan;
  const ids = new Set(items.map((i) => i.id));
  for (const item of items) {
    if (item.kind !== "move") continue;
    const after = item.after ?? [];
    expect(after.filter((id) => !ids.has(id) || id === item.id)).toEqual([]);
    expect(new Set(after).size).toBe(after.length);
    seen.after += after.length;
    if (tieOf({ items }, item).length > 0) seen.tied++;
  }
}

const seen = { after: 0, tied: 0, runs: 0, letters: 0, moves: 0, dropped: 0, duplicated: 0, reordered: 0, items: 0 };

function play(writers: number, steps: readonly Step[]): void {
  const network = new Network(start, writers);
  const ledger = new Ledger();
  for (const s of steps) take(network, ledger, s);
  network.settle();
  expectConverged(network.docs, network.everyUpdate);
  expectNothingLost(network.hub, ledger);
  expectHoldsSound(network.hub);
  seen.runs++;
  seen.letters += ledger.letters.length;
  seen.moves += ledger.moves;
  seen.dropped += network.dropped;
  seen.duplicated += network.duplicated;
  seen.reordered += network.reordered;
  seen.items += ledger.ids.length;
}

function take(network: Network, ledger: Ledger, s: Step): void {
  if (s.t === "flush") network.flush();
  else if (s.t === "deliver") network.deliver(s.who, s.way, s.pick, s.again);
  else if (s.t === "drop") network.drop(s.who, s.way, s.pick);
  else if (s.t === "disconnect") network.disconnect(s.who);
  else if (s.t === "reconnect") network.reconnect(s.who);
  else doAct(network.writers[s.who % network.writers.length] as Y.Doc, s.act, ledger);
}

/** Every item ever made and every letter ever typed is there, in the plan or among what was taken out, exactly once. */
function expectNothingLost(doc: Y.Doc, ledger: Ledger): void {
  const all = readAll(doc);
  const ids = [...all.plan.items.map((i) => i.id), ...all.deleted.map((d) => d.id)];
  expect([...ids].sort()).toEqual([...SMALL_PLAN.items.map((i) => i.id), ...ledger.ids].sort());
  const text = JSON.stringify(all);
  const lost = ledger.letters.filter((letter) => text.split(letter).length !== 2);
  expect(lost.map((letter) => letter.codePointAt(0)?.toString(16))).toEqual([]);
}

test.each([2, 3, 4])("%i writers converge in every order and lose nothing", (writers) => {
  fc.assert(
    fc.property(fc.array(step, { minLength: 5, maxLength: 90, size: "max" }), (steps) => play(writers, steps)),
    { seed: SEED + writers, numRuns: RUNS },
  );
});

test("one types in an empty script while the other adds a line: both are kept (found by the test above)", () => {
  const steps: Step[] = [
    { t: "act", who: 0, act: { kind: 3, on: 0, to: 0 } },
    { t: "act", who: 1, act: { kind: 5, on: 0, to: 0 } },
  ];
  play(2, steps);
});

test("the random runs did contain enough of each act", () => {
  expect(seen.runs).toBeGreaterThanOrEqual(3 * RUNS);
  expect(seen.letters).toBeGreaterThan(often(200, 1000));
  expect(seen.moves).toBeGreaterThan(often(40, 200));
  expect(seen.items).toBeGreaterThan(often(60, 300));
  expect(seen.after).toBeGreaterThan(often(20, 100));
  expect(seen.tied).toBeGreaterThan(often(20, 100));
  expect(seen.dropped).toBeGreaterThan(often(40, 200));
  expect(seen.duplicated).toBeGreaterThan(often(40, 200));
  expect(seen.reordered).toBeGreaterThan(often(40, 200));
});
