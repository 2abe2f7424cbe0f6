/** Which values count as replaced unread, by what their setter had read: the order of the server's answers does not matter. */
import { expect, test } from "vitest";
import * as Y from "yjs";
import { OvertakenValues } from "#lib/client/doc-session/overtaken.ts";
import { Values } from "#lib/client/doc-session/values.ts";

function page(clientID: number, from?: Y.Doc) {
  const doc = new Y.Doc();
  doc.clientID = clientID;
  const head = doc.getMap("head");
  if (from) Y.applyUpdate(doc, Y.encodeStateAsUpdate(from));
  const notes = new Map<string, unknown>();
  const clock = { ms: 0 };
  const values = new Values({ root: head, texts: { title: doc.getText("title") }, entries: doc.getMap("items") });
  const overtaken = new OvertakenValues({
    ...{ doc, values, isReady: () => true },
    wordsOf: ({ key, value }) => ({ name: `the ${key}`, says: String(value) }),
    names: () => ({ nameOf: (id) => `Page ${id}`, learn: () => undefined, all: [] }),
    keepNote: (name, value) => void (value === undefined ? notes.delete(name) : notes.set(name, value)),
    now: () => clock.ms,
  });
  overtaken.remember(new Map());
  overtaken.look();
  overtaken.settle();
  const hear = (other: Y.Doc) => {
    Y.applyUpdate(doc, Y.encodeStateAsUpdate(other), "server");
    overtaken.look();
  };
  return { doc, head, title: doc.getText("title"), overtaken, notes, clock, hear };
}

/** Two pages that have read the same. */
function two() {
  const mine = page(1);
  mine.head.set("length", 10);
  mine.overtaken.settle();
  const other = page(2, mine.doc);
  return { mine, other };
}
const told = ({ overtaken }: ReturnType<typeof page>) => overtaken.list.map(({ sentence }) => sentence);

test("replaced by somebody who had not read mine: told, even though mine was already saved", () => {
  const { mine, other } = two();
  mine.head.set("length", 20);
  other.head.set("length", 30);
  expect(mine.notes.size).toBeGreaterThan(0);
  mine.overtaken.settle();
  expect(mine.notes.size).toBe(0);
  mine.hear(other.doc);
  expect(told(mine)).toEqual(["Page 2 set the length to 30; you had 20."]);
  mine.overtaken.close();
  mine.head.set("depth", 1);
  mine.hear(other.doc);
  expect(told(mine), "told once").toEqual([]);
});

test("replaced by somebody who had read mine, directly or after others: not told", () => {
  const { mine, other } = two();
  mine.head.set("length", 20);
  mine.overtaken.settle();
  other.hear(mine.doc);
  mine.clock.ms += 3_000;
  other.head.set("length", 30);
  other.head.set("length", 40);
  const third = page(3, other.doc);
  third.head.set("length", 50);
  mine.hear(third.doc);
  expect([mine.head.get("length"), told(mine)]).toEqual([50, []]);
});

test("replaced within three seconds: told, though the other page had mine", () => {
  const { mine, other } = two();
  mine.head.set("length", 20);
  mine.overtaken.settle();
  other.hear(mine.doc);
  mine.clock.ms += 2_999;
  other.head.set("length", 30);
  mine.hear(other.doc);
  expect(told(mine)).toEqual(["Page 2 set the length to 30; you had 20."]);
  const third = page(3, other.doc);
  third.head.set("length", 50);
  mine.hear(third.doc);
  expect(told(mine), "as it is now").toEqual(["Page 3 set the length to 50; you had 20."]);
  mine.head.set("length", 60);
  expect(told(mine), "it is not so any more").toEqual([]);
  mine.overtaken.settle();
  expect(mine.notes.size).toBe(0);
});

test("texts are told only after an absence, since both people's words are in them", () => {
  const { mine, other } = two();
  mine.title.insert(0, "Pull");
  other.title.insert(0, "Press");
  mine.hear(other.doc);
  expect(told(mine)).toEqual([]);
  mine.overtaken.leave();
  mine.title.insert(0, "A");
  other.title.insert(0, "B");
  mine.hear(other.doc);
  expect(told(mine)).toEqual([expect.stringContaining("Page 2 set the title to ")]);
});
