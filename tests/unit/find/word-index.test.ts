/** The index of words as a file: thrown away and made anew when it is of no use, and written only where something differs. */
import { existsSync, readFileSync, statSync, writeFileSync } from "node:fs";
import { afterEach, beforeEach, describe, expect, test } from "vitest";
import { removeWordIndex, type WordIndex, wordIndexBeside, wordIndexFile } from "#db/words/word-index.ts";
import type { FindableLine } from "#lib/find/plan-lines.ts";
import { soughtWords } from "#lib/find/words.ts";
import { type TempDb, tempDb } from "#tests/support/temp-db.ts";

let temp: TempDb;
beforeEach(() => {
  temp = tempDb();
});
afterEach(() => temp.remove());

const said = (text: string, line = 0, itemId = "i"): FindableLine => ({ place: "said", itemId, line, text });
const plan = (planId: string, ...lines: FindableLine[]) => ({ planId, generation: "g", seq: 7, lines });
const ids = (index: WordIndex, text: string, among: readonly string[] = ["a", "b"]) =>
  index
    .find(soughtWords(text), among)
    .map(({ planId }) => planId)
    .sort();

test("finds plans by their lines, only among those asked about, and lines by their places", () => {
  const index = wordIndexBeside(temp.open());
  index.put(plan("a", said("breathe out as you row"), { place: "title", itemId: null, line: 0, text: "Rows" }));
  index.put(plan("b", said("long neck"), said("and row", 1)));
  expect(ids(index, "row")).toEqual(["a", "b"]);
  expect(ids(index, "row", ["b"])).toEqual(["b"]);
  expect(ids(index, "row", [])).toEqual([]);
  expect(index.find(soughtWords("row"), ["a"])).toEqual([{ planId: "a", place: "title", count: 2 }]);
  const lines = index.linesWith(soughtWords("row"), ["a", "b"], 1);
  expect([lines.get("a")?.[0]?.text, lines.get("b")?.[0]?.text]).toEqual(["Rows", "and row"]);
});

test("words of several lines find the plan too, after those that have them in one", () => {
  const index = wordIndexBeside(temp.open());
  index.put(plan("a", said("long neck"), said("row", 1)));
  expect(index.find(soughtWords("row neck"), ["a"])).toEqual([{ planId: "a", place: null, count: 0 }]);
  expect(ids(index, "row shoulder")).toEqual([]);
});

describe("a plan with many new lines", () => {
  const many = () => plan("a", ...Array.from({ length: 100 }, (_, n) => said(`row ${n}`, n)));
  const turn = () => new Promise((done) => setImmediate(done));
  const counted = (index: WordIndex) => index.find(soughtWords("row"), ["a"])[0]?.count;

  test("is written over several turns of the event loop, and is read only when it is whole", async () => {
    const index = wordIndexBeside(temp.open());
    index.put(many());
    expect(counted(index)).toBeLessThan(100);
    expect(index.readUpTo().get("a")?.seq).not.toBe(7);
    for (let n = 0; n < 5; n++) await turn();
    expect(counted(index)).toBe(100);
    expect(index.readUpTo().get("a")).toEqual({ generation: "g", seq: 7 });
  });

  test("leaves nothing when it is dropped meanwhile, and gives way to what was read later", async () => {
    const index = wordIndexBeside(temp.open());
    index.put(many());
    index.drop("a");
    for (let n = 0; n < 5; n++) await turn();
    expect([counted(index), index.readUpTo().size]).toEqual([undefined, 0]);
    index.put(many());
    index.put({ ...plan("a", said("row")), seq: 9 });
    for (let n = 0; n < 5; n++) await turn();
    expect([counted(index), index.readUpTo().get("a")?.seq]).toEqual([1, 9]);
  });

  test("may be left unfinished when the file closes", async () => {
    const db = temp.open();
    wordIndexBeside(db).put(many());
    db.close();
    await turn();
    expect(wordIndexBeside(temp.open()).readUpTo().get("a")?.seq).not.toBe(7);
  });
});

test("what a person types is never a query of its own", () => {
  const index = wordIndexBeside(temp.open());
  index.put(plan("a", said('row and "not" near (press)')));
  for (const text of ['"', "row*", "row AND", 'NOT "row', "words:row", "(row", "^row", "row -press", "ro'w"])
    expect(() => ids(index, text)).not.toThrow();
  expect(ids(index, "words:row")).toEqual([]);
  expect(ids(index, 'row "not"')).toEqual(["a"]);
});

test("a plan read again replaces what it said; one that is dropped is found no more", () => {
  const index = wordIndexBeside(temp.open());
  index.put(plan("a", said("long neck"), said("row", 1)));
  index.put({ ...plan("a", said("long spine"), said("row", 1)), seq: 9 });
  expect([ids(index, "neck"), ids(index, "spine"), ids(index, "row")]).toEqual([[], ["a"], ["a"]]);
  expect(index.readUpTo().get("a")).toEqual({ generation: "g", seq: 9 });
  index.drop("a");
  expect([ids(index, "row"), index.readUpTo().size]).toEqual([[], 0]);
});

test("is a file for its owner alone, kept over a restart", () => {
  const first = temp.open();
  wordIndexBeside(first).put(plan("a", said("row")));
  first.close();
  const index = wordIndexBeside(temp.open());
  expect(ids(index, "row")).toEqual(["a"]);
  expect(statSync(wordIndexFile(temp.file)).mode & 0o077).toBe(0);
});

test.each([
  ["damaged", (file: string) => writeFileSync(file, readFileSync(file).fill(7, 100, 3000))],
  ["no database", (file: string) => writeFileSync(file, "words")],
])("one that is %s is made anew", (_what, spoil) => {
  const first = temp.open();
  wordIndexBeside(first).put(plan("a", said("row")));
  first.close();
  spoil(wordIndexFile(temp.file));
  const index = wordIndexBeside(temp.open());
  expect(index.readUpTo().size).toBe(0);
  index.put(plan("a", said("row")));
  expect(ids(index, "row")).toEqual(["a"]);
});

test("nothing of it is left when it is removed", () => {
  const db = temp.open();
  wordIndexBeside(db).put(plan("a", said("row")));
  removeWordIndex(temp.file);
  expect(existsSync(wordIndexFile(temp.file))).toBe(false);
});

test("of a plan deleted for good no word is left in the file or its log", () => {
  const db = temp.open();
  const index = wordIndexBeside(db);
  const filler = Array.from({ length: 200 }, (_, n) => said(`long neck ${n}`, n));
  const bytes = () =>
    ["", "-wal"].map((end) => readFileSync(`${wordIndexFile(db.file)}${end}`).toString("latin1")).join("");
  index.put(plan("a", said("my xylophonist sister")));
  index.put(plan("b", ...filler));
  expect(bytes()).toContain("xylophonist");
  index.drop("a");
  index.put(plan("a", said("my xylophonist sister")));
  index.erase(["a"]);
  expect(bytes()).not.toContain("xylophonist");
  expect([ids(index, "xylophonist"), ids(index, "neck")]).toEqual([[], ["b"]]);
});
