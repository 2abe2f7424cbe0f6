/**
 * The server's judgement of an update before it is applied, against yjs itself: what a transaction deletes is known for
 * certain only afterwards. Honest pages, undo and redo included, are never refused; one that erases is, whatever the update is
 * wrapped in.
 */
import fc from "fast-check";
import { expect, test } from "vitest";
import * as Y from "yjs";
import { planUndo } from "#app/_session/plan-undo.ts";
import type { ActUndo } from "#lib/client/act-undo.ts";
import { createPlanDoc } from "#lib/doc/create.ts";
import { planParts } from "#lib/doc/layout.ts";
import { planProtection } from "#lib/doc/protected-parts.ts";
import { erases } from "#server/sync/erasing.ts";
import { often } from "#tests/support/long.ts";
import { SMALL_PLAN } from "#tests/support/sync-server.ts";
import { ACT_KINDS, type Act, doAct, Ledger } from "./acts.ts";

const SEED = 20_261_126;
const n = fc.nat({ max: 5000 });
const act: fc.Arbitrary<Act> = fc.record({ kind: fc.nat({ max: ACT_KINDS - 1 }), on: n, to: n });
const honest = fc.oneof(
  { weight: 8, arbitrary: fc.record({ t: fc.constant("act" as const), who: n, act }) },
  { weight: 2, arbitrary: fc.record({ t: fc.constantFrom("undo" as const, "redo" as const), who: n }) },
  { weight: 2, arbitrary: fc.record({ t: fc.constant("meet" as const), who: n }) },
);
type Honest = typeof honest extends fc.Arbitrary<infer T> ? T : never;

interface Page {
  readonly doc: Y.Doc;
  readonly undo: ActUndo;
}

function setUp(pages: number): { server: Y.Doc; pages: Page[] } {
  const server = createPlanDoc(SMALL_PLAN, { carry: true });
  return {
    server,
    pages: Array.from({ length: pages }, () => {
      const doc = new Y.Doc();
      Y.applyUpdate(doc, Y.encodeStateAsUpdate(server), "server");
      return { doc, undo: planUndo({ doc, origin: "act" }, () => undefined) };
    }),
  };
}

/** Offers everything the page holds, as on connecting, and has it judged; then both have it. */
function meet(server: Y.Doc, { doc }: Page): boolean {
  const offer = Y.encodeStateAsUpdate(doc, Y.encodeStateVector(server));
  const refused = erases(server, Y.decodeUpdate(offer), planProtection(server));
  Y.applyUpdate(server, offer);
  Y.applyUpdate(doc, Y.encodeStateAsUpdate(server, Y.encodeStateVector(doc)), "server");
  return refused;
}

function takeStep(server: Y.Doc, page: Page, step: Honest, ledger: Ledger): boolean {
  if (step.t === "meet") return meet(server, page);
  if (step.t === "act") page.undo.step(() => doAct(page.doc, step.act, ledger));
  else page.undo[step.t]();
  return false;
}

test("[INV-07] three honest pages, offline for as long as they like, undoing and redoing, are never refused", () => {
  let offers = 0;
  fc.assert(
    fc.property(fc.array(honest, { minLength: 10, maxLength: 80, size: "max" }), (steps) => {
      const { server, pages } = setUp(3);
      const ledger = new Ledger();
      for (const step of steps) {
        expect(takeStep(server, pages[step.who % 3] as Page, step, ledger)).toBe(false);
        if (step.t === "meet") offers++;
      }
      for (const page of pages) expect(meet(server, page)).toBe(false);
      const kept = new Set(planParts(server).items.keys());
      expect([...ledger.ids, "a", "rest", "b"].every((id) => kept.has(id))).toBe(true);
      for (const page of pages) page.undo.destroy();
    }),
    { seed: SEED, numRuns: often(40, 120) },
  );
  expect(offers).toBeGreaterThan(often(100, 300));
});

const theft = fc.record({ kind: fc.nat({ max: 5 }), on: n });
const THEFTS: readonly ((items: Y.Map<Y.Map<unknown>>, id: string) => void)[] = [
  (items, id) => items.delete(id),
  (items, id) => items.set(id, new Y.Map()),
  (items, id) => items.get(id)?.set("kind", "heading"),
  (items, id) => items.get(id)?.delete("kind"),
  (items, id) => items.get(id)?.set("script", new Y.XmlFragment()),
  (items, id) => items.get(id)?.set("label", new Y.Text("mine")),
];

test("[INV-07] an update is refused exactly when yjs, applying it, would remove what is protected", () => {
  const seen = { refused: 0, taken: 0 };
  const script = fc.array(fc.oneof(act, theft), { minLength: 1, maxLength: 12 });
  fc.assert(
    fc.property(fc.array(act, { maxLength: 20 }), script, (before, during) => {
      const { server, pages } = setUp(1);
      const [page] = pages as [Page];
      const ledger = new Ledger();
      for (const one of before) doAct(page.doc, one, ledger);
      meet(server, page);
      const known = Y.encodeStateVector(server);
      for (const one of during) {
        const { items } = planParts(page.doc);
        const ids = [...items.keys()].sort();
        if ("to" in one) doAct(page.doc, one, ledger);
        else THEFTS[one.kind]?.(items, ids[one.on % ids.length] ?? "");
      }
      const update = Y.encodeStateAsUpdate(page.doc, known);
      const refused = erases(server, Y.decodeUpdate(update), planProtection(server));
      expect(refused).toBe(takesAway(server, update));
      seen[refused ? "refused" : "taken"]++;
      page.undo.destroy();
    }),
    { seed: SEED, numRuns: often(130, 400) },
  );
  expect(seen.refused).toBeGreaterThan(often(33, 100));
  expect(seen.taken).toBeGreaterThan(often(16, 50));
});

const living = (struct: Y.Item | undefined) => (struct?.deleted ? undefined : struct);

/** Asks yjs: applies the update to a copy and checks whether any map, kind or text has disappeared. */
function takesAway(server: Y.Doc, update: Uint8Array): boolean {
  const copy = new Y.Doc();
  Y.applyUpdate(copy, Y.encodeStateAsUpdate(server));
  const { items } = planParts(copy);
  const held = (): Map<string, unknown> =>
    new Map(
      [...items].flatMap(([id, map]) => [
        [id, map],
        ...["kind", "label", "script"].map((key): [string, unknown] => [`${id}.${key}`, living(map._map.get(key))]),
      ]),
    );
  const before = held();
  Y.applyUpdate(copy, update);
  const after = held();
  const gone = [...before].some(([key, value]) => value !== undefined && after.get(key) !== value);
  copy.destroy();
  return gone;
}
