/** Undo where two people set one value at the same moment, or one after the other: what each sees and is told. */
import { afterEach, describe, expect, test } from "vitest";
import * as Y from "yjs";
import { planUndo } from "#app/_session/plan-undo.ts";
import type { ActUndo } from "#lib/client/act-undo.ts";
import { createPlanDoc } from "#lib/doc/create.ts";
import { planParts } from "#lib/doc/layout.ts";
import { setComesAfter } from "#lib/doc/order-constraints.ts";
import { orderedIds, readDeleted, readItemById, readItems, readPlan } from "#lib/doc/read.ts";
import {
  act,
  addScriptLine,
  deleteItem,
  insertItem,
  moveItem,
  restoreItem,
  setHead,
  setItemField,
  setSpring,
  setText,
  type Writer,
} from "#lib/doc/write.ts";
import type { MoveItem, Plan } from "#lib/plan/schema.ts";

const item = (id: string): MoveItem => ({ id, kind: "move", move: "plank", side: "both", seconds: 50, springs: {} });
const plan: Plan = {
  format: "springline.plan/1",
  title: "Trunk",
  lengthSeconds: 1500,
  equipment: { name: "Six machines", carriageTravelMm: 1000, springs: [] },
  moves: {},
  items: ["a", "b", "c", "d"].map(item),
};
interface Page {
  readonly writer: Writer;
  readonly undo: ActUndo;
  does(change: (w: Writer) => void): void;
}
const opened: Page[] = [];
afterEach(() => {
  for (const page of opened.splice(0)) page.undo.destroy();
});

/** Client ids decide who wins where two set one value at once: both orders are tried. */
function pages(...clients: number[]): Page[] {
  const seed = createPlanDoc(plan, { carry: true });
  return clients.map((clientId) => {
    const doc = new Y.Doc();
    doc.clientID = clientId;
    Y.applyUpdate(doc, Y.encodeStateAsUpdate(seed), "server");
    const writer = { doc, origin: { page: clientId } };
    const undo = planUndo(writer, () => undefined);
    const page: Page = { writer, undo, does: (change) => undo.step(() => act(writer, () => change(writer))) };
    opened.push(page);
    return page;
  });
}

/** Everybody hears everybody: what is new goes as updates do, all at once. */
function meet(all: readonly Page[]): void {
  const news = all.map(({ writer }) => Y.encodeStateAsUpdate(writer.doc));
  for (const { writer } of all) for (const update of news) Y.applyUpdate(writer.doc, update, "server");
}
const seconds = ({ writer }: Page, id = "b") => (readItemById(writer.doc, id) as MoveItem | undefined)?.seconds;
const fieldOf = ({ writer }: Page, key: string, id = "b") => planParts(writer.doc).items.get(id)?.get(key);

/** Both presses, in every order of undoing and hearing of each other. */
const ORDERS: Record<string, (marta: Page, jonas: Page) => void> = {
  "Marta first": (marta, jonas) => {
    marta.undo.undo();
    meet([marta, jonas]);
    jonas.undo.undo();
  },
  "Jonas first": (marta, jonas) => {
    jonas.undo.undo();
    meet([marta, jonas]);
    marta.undo.undo();
  },
  "both at once": (marta, jonas) => {
    marta.undo.undo();
    jonas.undo.undo();
  },
};

describe.each([
  [1, 2],
  [2, 1],
])("two people at the same moment (client ids %i and %i)", (one, two) => {
  describe.each(Object.keys(ORDERS))("undoing: %s", (order) => {
    test.each([true, false])("+ and − on one item, both undone: the seconds are as before (met between: %s)", (met) => {
      const [marta, jonas] = pages(one, two) as [Page, Page];
      marta.does((w) => setItemField(w, "b", "seconds", 55));
      jonas.does((w) => setItemField(w, "b", "seconds", 45));
      if (met) meet([marta, jonas]);
      ORDERS[order]?.(marta, jonas);
      meet([marta, jonas]);
      expect([seconds(marta), seconds(jonas)]).toEqual([50, 50]);
    });

    test.each([true, false])("both move one item, both undone: it is back where it was (met between: %s)", (met) => {
      const [marta, jonas] = pages(one, two) as [Page, Page];
      const place = fieldOf(marta, "order");
      marta.does((w) => moveItem(w, "b", null));
      jonas.does((w) => moveItem(w, "b", "d"));
      if (met) meet([marta, jonas]);
      ORDERS[order]?.(marta, jonas);
      meet([marta, jonas]);
      for (const page of [marta, jonas]) {
        expect(orderedIds(page.writer.doc)).toEqual(["a", "b", "c", "d"]);
        expect(fieldOf(page, "order")).toBe(place);
      }
    });
  });

  test("the person whose value lost is told whose value stands, and undoes none of it", () => {
    const [marta, jonas] = pages(one, two) as [Page, Page];
    marta.does((w) => setItemField(w, "b", "seconds", 55));
    jonas.does((w) => setItemField(w, "b", "seconds", 45));
    meet([marta, jonas]);
    const [winner, loser, theirs] = seconds(marta) === 55 ? [marta, jonas, 55] : [jonas, marta, 45];
    expect(loser.undo.undo()).toEqual({
      done: false,
      stood: [{ entry: "b", key: "seconds", why: "changed", by: winner.writer.doc.clientID, value: theirs }],
    });
    expect(loser.undo.canUndo || loser.undo.canRedo).toBe(false);
    meet([marta, jonas]);
    expect(seconds(winner)).toBe(theirs);
    expect(winner.undo.undo().done).toBe(true);
    expect(seconds(winner)).toBe(50);
    winner.undo.redo();
    expect(seconds(winner)).toBe(theirs);
  });
});

describe("one after the other", () => {
  test("what somebody has set since stays, and each person undoes only their own", () => {
    const [marta, jonas] = pages(1, 2) as [Page, Page];
    marta.does((w) => setItemField(w, "b", "seconds", 55));
    meet([marta, jonas]);
    jonas.does((w) => setItemField(w, "b", "seconds", 45));
    meet([marta, jonas]);
    expect(marta.undo.undo().stood).toMatchObject([{ why: "changed", by: 2, value: 45 }]);
    expect(seconds(marta)).toBe(45);
    jonas.undo.undo();
    expect(seconds(jonas)).toBe(55);
  });

  test.each(["seconds", "range"] as const)(
    "newest first across people, all is as at the start, and redone (%s)",
    (field) => {
      const [marta, jonas] = pages(1, 2) as [Page, Page];
      const set = (page: Page, value: number) =>
        page.does((w) =>
          field === "seconds" ? setItemField(w, "b", field, value) : setItemField(w, "b", field, [value, 90]),
        );
      const before = readItems(marta.writer.doc);
      set(marta, 55);
      meet([marta, jonas]);
      set(jonas, 45);
      meet([marta, jonas]);
      const after = readItems(marta.writer.doc);
      for (const page of [jonas, marta]) {
        expect(page.undo.undo()).toMatchObject({ done: true, stood: [] });
        meet([marta, jonas]);
      }
      expect(readItems(jonas.writer.doc)).toEqual(before);
      for (const page of [marta, jonas]) {
        expect(page.undo.redo()).toMatchObject({ done: true, stood: [] });
        meet([marta, jonas]);
      }
      expect(readItems(marta.writer.doc)).toEqual(after);
    },
  );

  test("a spring I took off, put on by another who undoes that: my undo puts it back on", () => {
    const [marta, jonas] = pages(1, 2) as [Page, Page];
    marta.does((w) => setSpring(w, "b", "firm", 2));
    marta.does((w) => setSpring(w, "b", "firm", 0));
    meet([marta, jonas]);
    jonas.does((w) => setSpring(w, "b", "firm", 3));
    jonas.undo.undo();
    meet([marta, jonas]);
    expect(fieldOf(marta, "spring.firm")).toBeUndefined();
    expect(marta.undo.undo().done).toBe(true);
    expect(fieldOf(marta, "spring.firm")).toBe(2);
  });

  test("a value another person typed is theirs, even if it equals the earlier value", () => {
    const [marta, jonas] = pages(1, 2) as [Page, Page];
    marta.does((w) => setItemField(w, "b", "seconds", 55));
    meet([marta, jonas]);
    jonas.does((w) => setItemField(w, "b", "seconds", 45));
    jonas.does((w) => setItemField(w, "b", "seconds", 55));
    meet([marta, jonas]);
    expect(marta.undo.undo().stood).toMatchObject([{ why: "changed", by: 2, value: 55 }]);
    expect(seconds(marta)).toBe(55);
  });

  test("of a step with several values, those that can be undone are; redo brings those back", () => {
    const [marta, jonas] = pages(1, 2) as [Page, Page];
    marta.does((w) => {
      for (const id of ["a", "b", "c"]) setItemField(w, id, "seconds", 80);
      setText(w, planParts(w.doc).title, "Trunk day");
      setHead(w, "level", "open");
    });
    meet([marta, jonas]);
    jonas.does((w) => setItemField(w, "b", "seconds", 45));
    meet([marta, jonas]);
    const outcome = marta.undo.undo();
    expect(outcome).toMatchObject({ done: true, stood: [{ entry: "b", by: 2, value: 45 }] });
    const now = () => [
      ["a", "b", "c"].map((id) => seconds(marta, id)),
      readPlan(marta.writer.doc, { moves: {}, equipment: plan.equipment }),
    ];
    expect(now()).toMatchObject([[50, 45, 50], { title: "Trunk" }]);
    expect(now()[1]).not.toHaveProperty("level");
    expect(marta.undo.canUndo).toBe(false);
    marta.undo.redo();
    expect(now()).toMatchObject([[80, 45, 80], { title: "Trunk day", level: "open" }]);
    expect(marta.undo.canRedo).toBe(false);
    marta.undo.undo();
    expect(now()).toMatchObject([[50, 45, 50], { title: "Trunk" }]);
  });

  test("a value that another's undo already brought back is reported, and no older step is undone with it", () => {
    const [marta, jonas] = pages(1, 2) as [Page, Page];
    marta.does((w) => setItemField(w, "a", "seconds", 60));
    marta.does((w) => setItemField(w, "b", "seconds", 55));
    jonas.does((w) => setItemField(w, "b", "seconds", 45));
    meet([marta, jonas]);
    expect(seconds(marta)).toBe(45);
    jonas.undo.undo();
    meet([marta, jonas]);
    expect(marta.undo.undo()).toMatchObject({ done: false, stood: [{ why: "already", value: 50 }] });
    expect(seconds(marta, "a")).toBe(60);
  });
});

describe("what is taken out", () => {
  test("nothing is undone in an item that another took out: neither values nor words", () => {
    const [marta, jonas] = pages(1, 2) as [Page, Page];
    marta.does((w) => setItemField(w, "b", "seconds", 55));
    marta.does((w) => addScriptLine(w, "b", { kind: "form", text: "Ribs in." }));
    meet([marta, jonas]);
    jonas.does((w) => deleteItem(w, "b", 1000));
    meet([marta, jonas]);
    expect(marta.undo.undo()).toMatchObject({
      done: false,
      stood: [{ entry: "b", key: null, why: "gone", by: 2 }],
    });
    expect(marta.undo.undo()).toMatchObject({ done: false, stood: [{ entry: "b", why: "gone", by: 2 }] });
    jonas.undo.undo();
    expect(readItemById(jonas.writer.doc, "b")).toMatchObject({ seconds: 55, script: [{ text: "Ribs in." }] });
  });

  test("two people take out one item at once and both undo: it is there", () => {
    const [marta, jonas] = pages(1, 2) as [Page, Page];
    for (const page of [marta, jonas]) page.does((w) => deleteItem(w, "b", page.writer.doc.clientID));
    meet([marta, jonas]);
    expect(jonas.undo.undo().done).toBe(true);
    meet([marta, jonas]);
    expect(marta.undo.undo()).toMatchObject({ done: false, stood: [{ why: "already" }] });
    meet([marta, jonas]);
    expect(orderedIds(marta.writer.doc)).toEqual(["a", "b", "c", "d"]);
  });

  test("[INV-07] undoing the creation of an item that another changed takes it out: it is listed and can be put back whole", () => {
    const [marta, jonas] = pages(1, 2) as [Page, Page];
    marta.does((w) => insertItem(w, "a", item("new")));
    meet([marta, jonas]);
    jonas.does((w) => setItemField(w, "new", "seconds", 75));
    meet([marta, jonas]);
    expect(marta.undo.undo()).toEqual({ done: true, stood: [] });
    meet([marta, jonas]);
    expect(readDeleted(jonas.writer.doc)).toMatchObject([{ id: "new", item: { seconds: 75 } }]);
    jonas.does((w) => restoreItem(w, "new"));
    meet([marta, jonas]);
    expect(marta.undo.redo()).toMatchObject({ done: false, stood: [{ why: "already" }] });
    expect(seconds(marta, "new")).toBe(75);
  });

  test("undoing the creation of an item that another has since taken out and put back leaves it there", () => {
    const [marta, jonas] = pages(1, 2) as [Page, Page];
    marta.does((w) => insertItem(w, "a", item("new")));
    meet([marta, jonas]);
    jonas.does((w) => deleteItem(w, "new", 1000));
    jonas.does((w) => restoreItem(w, "new"));
    meet([marta, jonas]);
    expect(marta.undo.undo()).toMatchObject({ done: false, stood: [{ entry: "new", key: "deleted", why: "changed" }] });
    expect(orderedIds(marta.writer.doc)).toContain("new");
  });
});

test("what an item comes after, undone to nothing, reads as before and can be set again", () => {
  const [marta, jonas] = pages(1, 2) as [Page, Page];
  const before = readItems(marta.writer.doc);
  marta.does((w) => setComesAfter(w, "c", "a", true));
  marta.does((w) => setComesAfter(w, "c", "a", false));
  marta.does((w) => setComesAfter(w, "c", "b", true));
  for (const _ of [1, 2, 3]) marta.undo.undo();
  meet([marta, jonas]);
  expect(readItems(jonas.writer.doc)).toEqual(before);
  jonas.does((w) => setComesAfter(w, "c", "a", true));
  jonas.does((w) => setComesAfter(w, "c", "a", false));
  expect(readItems(jonas.writer.doc)).toEqual(before);
});

describe("two who write one text anew at the same moment, and both undo", () => {
  const anew = (words: string) => (w: Writer) => {
    const { title } = planParts(w.doc);
    title.delete(0, title.length);
    title.insert(0, words);
  };
  const title = ({ writer }: Page) => planParts(writer.doc).title.toString();

  for (const [name, undoAll] of Object.entries(ORDERS))
    for (const clients of [
      [1, 2],
      [2, 1],
    ])
      test(`${name}, pages ${clients.join(" and ")}: the words are there once`, () => {
        const [marta, jonas] = pages(...clients) as [Page, Page];
        marta.does(anew("Hips first"));
        jonas.does(anew("Slow shoulders"));
        meet([marta, jonas]);
        undoAll(marta, jonas);
        meet([marta, jonas]);
        meet([marta, jonas]);
        expect([title(marta), title(jonas)]).toEqual(["Trunk", "Trunk"]);
      });

  test("words another brought back and continued are theirs: undo does not add a second copy", () => {
    const [marta, jonas] = pages(1, 2) as [Page, Page];
    marta.does(anew("Hips"));
    jonas.does(anew("Arms"));
    meet([marta, jonas]);
    marta.undo.undo();
    marta.does((w) => planParts(w.doc).title.insert(5, " day"));
    meet([marta, jonas]);
    jonas.undo.undo();
    meet([marta, jonas]);
    expect(title(marta)).toBe(title(jonas));
    expect(title(marta).match(/Trunk/g)).toHaveLength(1);
    expect(title(marta)).toContain("day");
  });
});
