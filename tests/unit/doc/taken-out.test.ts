import { expect, test } from "vitest";
import * as Y from "yjs";
import { itemWordsAsText, lossWords } from "#app/_taken-out/taken-out-words.ts";
import { NamesSeen } from "#lib/client/names-seen.ts";
import { createPlanDoc } from "#lib/doc/create.ts";
import { UNDONE_CREATION } from "#lib/doc/layout.ts";
import { labelOf } from "#lib/doc/read.ts";
import { takenOut } from "#lib/doc/taken-out.ts";
import { deleteItem, insertItem, restoreItem } from "#lib/doc/write.ts";
import { examplePlan } from "#lib/rules/define/example-plan.ts";

function pair(): [Y.Doc, Y.Doc, () => void] {
  const a = createPlanDoc(examplePlan([]), { carry: true });
  const b = new Y.Doc();
  const pass = () => {
    Y.applyUpdate(b, Y.encodeStateAsUpdate(a));
    Y.applyUpdate(a, Y.encodeStateAsUpdate(b));
  };
  insertItem({ doc: a, origin: 1 }, null, { id: "h", kind: "heading", title: "Quiet" });
  pass();
  return [a, b, pass];
}

test("an item is taken out by the page that set the mark; words written at the same moment stay with it", () => {
  const [a, b, pass] = pair();
  deleteItem({ doc: b, origin: 1 }, "h", 5);
  labelOf(a, "h")?.insert(5, " finish");
  pass();
  const gone = takenOut(a, "h");
  expect([gone?.by, gone?.undone]).toEqual([b.clientID, false]);
  expect(gone && itemWordsAsText(examplePlan([]), gone.item)).toBe("Quiet finish");
  restoreItem({ doc: a, origin: 1 }, "h");
  expect(takenOut(a, "h")).toBeUndefined();
  deleteItem({ doc: b, origin: 1 }, "h", UNDONE_CREATION);
  expect(takenOut(b, "h")?.undone).toBe(true);
});

test('names are remembered after their pages close; an unknown page is "Somebody"', () => {
  const states = new Map<number, Record<string, unknown>>([
    [7, { user: { id: "jonas", name: "Jonas Berg" } }],
    [8, { user: { id: "marta", name: "Marta Lindqvist" } }],
    [9, { user: "forged" }],
  ]);
  const listeners = new Set<() => void>();
  const awareness = {
    getStates: () => states,
    on: (_: string, hear: () => void) => listeners.add(hear),
    off: (_: string, hear: () => void) => listeners.delete(hear),
  };
  const names = new NamesSeen(awareness as unknown as ConstructorParameters<typeof NamesSeen>[0], { id: "marta" });
  states.clear();
  for (const hear of listeners) hear();
  expect([7, 8, 9].map((id) => names.who(id))).toEqual(["Jonas Berg", "You", "Somebody"]);
  names.stop();
  expect(listeners.size).toBe(0);
  expect(lossWords(names.who(7), "Plank", { undone: true, words: "", writes: true })).toBe(
    "Jonas Berg undid adding Plank. It is kept and can be put back.",
  );
});
