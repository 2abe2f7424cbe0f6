/** A lock keeps the seconds it was set at, whatever somebody offline did to them meanwhile. */
import { describe, expect, test } from "vitest";
import * as Y from "yjs";
import { checkPlan } from "#lib/analysis/check-plan.ts";
import { createPlanDoc } from "#lib/doc/create.ts";
import { planParts } from "#lib/doc/layout.ts";
import { readItemById, readPlan } from "#lib/doc/read.ts";
import { duplicateItem, setHead, setItemField, type Writer } from "#lib/doc/write.ts";
import { fitToLength } from "#lib/fit/fit.ts";
import { SMALL_PLAN } from "#tests/support/sync-server.ts";

/**
 * Two rows of 60 s in a class of 300 s. Opening, closing and the pause take 140 s, one spring more before the second row
 * 7 s (2 + 3 + 2): 153 s are left for both, 152 s of them in whole repetitions of 4 s.
 */
const plan = { ...SMALL_PLAN, openingSeconds: 60, closingSeconds: 60 };
const studio = { moves: {}, equipment: plan.equipment, standards: {} };

function page(from: Y.Doc): Writer {
  const doc = new Y.Doc();
  Y.applyUpdate(doc, Y.encodeStateAsUpdate(from), "server");
  return { doc, origin: {} };
}
function meet(a: Writer, b: Writer): void {
  Y.applyUpdate(b.doc, Y.encodeStateAsUpdate(a.doc));
  Y.applyUpdate(a.doc, Y.encodeStateAsUpdate(b.doc));
}
/** As taking the times of a preview does. */
function takeFit(w: Writer): void {
  const answer = fitToLength(readPlan(w.doc, studio));
  if (!answer.possible) throw new Error(answer.say);
  for (const { item, to } of answer.changed) setItemField(w, item, "seconds", to);
  setHead(w, "closingSeconds", answer.closingSeconds);
}
const item = (w: Writer, id: string) => readItemById(w.doc, id);

describe("a lock", () => {
  // Whose write wins a key is a matter of client ids: many pairs, so that both ways are met.
  test.each(Array.from({ length: 12 }, (_, i) => i))("holds against a fit made offline meanwhile (%i)", () => {
    const seed = createPlanDoc(plan, { carry: true });
    const [online, offline] = [page(seed), page(seed)];
    takeFit(offline);
    expect(item(offline, "a")).toMatchObject({ seconds: 76 });
    setItemField(online, "a", "locked", true);
    meet(online, offline);
    for (const w of [online, offline]) {
      expect(item(w, "a")).toMatchObject({ seconds: 60, locked: true });
      expect(item(w, "b")).toMatchObject({ seconds: 76 });
      // The class is 17 s short of its length then, and that is said.
      const read = readPlan(w.doc, studio);
      expect(checkPlan(read).findings.map((f) => f.rule)).toContain("total-length");
    }
    // 92 s are left for it: 88 are the whole repetitions nearest to 76, and 4 s go to the closing.
    takeFit(online);
    expect(item(online, "a")).toMatchObject({ seconds: 60 });
    expect(item(online, "b")).toMatchObject({ seconds: 88 });
    // Let go it keeps what it was locked at.
    setItemField(online, "a", "locked", undefined);
    meet(online, offline);
    expect(item(offline, "a")).toMatchObject({ seconds: 60 });
    expect(item(offline, "a")).not.toHaveProperty("locked");
  });

  test("set before the fit leaves the seconds alone, and a person can still change them by hand", () => {
    const w = page(createPlanDoc(plan, { carry: true }));
    setItemField(w, "a", "locked", true);
    takeFit(w);
    expect(item(w, "a")).toMatchObject({ seconds: 60 });
    setItemField(w, "a", "seconds", 45);
    expect(item(w, "a")).toMatchObject({ seconds: 45, locked: true });
    duplicateItem(w, "a", "copy");
    expect(item(w, "copy")).toMatchObject({ seconds: 45, locked: true });
  });

  test("in a document from before locks had a key uses the item's seconds; a file's lock holds", () => {
    const [first, ...rest] = plan.items;
    const locked = { ...plan, items: [{ ...first, locked: true } as typeof first, ...rest] } as typeof plan;
    const seed = createPlanDoc(locked, { carry: true });
    const w = page(seed);
    const offline = page(seed);
    planParts(offline.doc).items.get("a")?.set("seconds", 90);
    meet(w, offline);
    expect(item(w, "a")).toMatchObject({ seconds: 60, locked: true });
    planParts(w.doc).items.get("a")?.delete("lockedSeconds");
    expect(item(w, "a")).toMatchObject({ seconds: 90, locked: true });
  });
});
