/** One shared text in the fields of two people, act by act. */
import { describe, expect, test } from "vitest";
import * as Y from "yjs";
import { TypedField } from "#tests/support/typed-field.ts";

/** Two people's fields over one text; nothing passes between them until it is delivered. */
function two(words: string, options: ConstructorParameters<typeof TypedField>[1] = {}) {
  const docs = [new Y.Doc(), new Y.Doc()] as const;
  docs[0].clientID = 1;
  docs[1].clientID = 2;
  docs[0].getText("t").insert(0, words);
  Y.applyUpdate(docs[1], Y.encodeStateAsUpdate(docs[0]), "wire");
  const [a, b] = [new TypedField(docs[0].getText("t"), options), new TypedField(docs[1].getText("t"), options)];
  const deliver = () => {
    const [fromA, fromB] = docs.map((doc) => Y.encodeStateAsUpdate(doc)) as [Uint8Array, Uint8Array];
    Y.applyUpdate(docs[1], fromA, "wire");
    Y.applyUpdate(docs[0], fromB, "wire");
    expect(b.text.toString()).toBe(a.text.toString());
  };
  return { a, b, deliver };
}

describe("what others write", () => {
  test("carries the caret along, and the next letter stands with the last", () => {
    const { a, b, deliver } = two("trunk");
    a.caret(5);
    a.type(" d");
    b.caret(0);
    b.type("The ");
    deliver();
    expect(a.selectionEnd).toBe("The trunk d".length);
    a.type("ay");
    deliver();
    expect(b.value).toBe("The trunk day");
    expect(b.selectionEnd).toBe(4);
  });

  test("does not grow a selection that is then typed over", () => {
    const { a, b, deliver } = two("one two three");
    a.setSelectionRange(4, 7, "backward");
    b.caret(4);
    b.type("x ");
    b.caret(9);
    b.type("y");
    deliver();
    expect([a.selectionStart, a.selectionEnd, a.selectionDirection]).toEqual([6, 9, "backward"]);
    a.type("2");
    deliver();
    expect(b.value).toBe("one x 2y three");
  });

  test("is not shown before composing ends; then both are there", () => {
    const { a, b, deliver } = two("ab");
    a.caret(2);
    a.composeTo("に", 0);
    b.caret(0);
    b.type("xyz ");
    deliver();
    expect(a.value).toBe("abに");
    a.composeTo("日本", 1);
    a.binding.composed();
    expect([a.value, a.selectionEnd]).toEqual(["xyz ab日本", 8]);
    deliver();
    expect(b.value).toBe("xyz ab日本");
  });

  test("stays when it was put among letters that are composed over meanwhile", () => {
    const { a, b, deliver } = two("one two");
    a.setSelectionRange(0, 7);
    a.composeTo("é", 7);
    b.caret(3);
    b.type("!");
    deliver();
    a.binding.composed();
    deliver();
    expect(b.value).toBe("é!");
  });
});

test("a field that is taken away while composing gives what was composed to the text", () => {
  const { a, b, deliver } = two("ab");
  a.caret(2);
  a.composeTo("に", 0);
  a.binding.release();
  deliver();
  expect(b.value).toBe("abに");
  b.type("x");
  deliver();
  expect(a.value, "it hears no more").toBe("abに");
});

test("whoever may not write changes nothing, and sees the text again", () => {
  const { a } = two("ab");
  a.host.canWrite = false;
  a.caret(1);
  a.type("x");
  expect([a.text.toString(), a.value, a.selectionEnd]).toEqual(["ab", "ab", 1]);
});

test("a text that is gone from its document is written no more", () => {
  const doc = new Y.Doc();
  const map = doc.getMap("items");
  const text = new Y.Text("ab");
  map.set("t", text);
  const field = new TypedField(text);
  map.delete("t");
  field.caret(0);
  field.type("x");
  expect(field.value).toBe(field.text.toString());
});

describe("the longest it may be", () => {
  test("stops one's own letters and takes none of the others'", () => {
    const { a, b, deliver } = two("12345678", { maxLength: 10 });
    a.caret(8);
    a.composeTo("ab", 0);
    b.caret(0);
    b.type("xy");
    deliver();
    a.binding.composed();
    deliver();
    expect(b.value).toBe("xy12345678");
    b.type("no");
    expect([b.value, b.selectionEnd]).toEqual(["xy12345678", 2]);
  });
  test("a text that two people made too long together stays whole, and can be shortened", () => {
    const { a, b, deliver } = two("12345678", { maxLength: 10 });
    a.caret(8);
    a.type("ab");
    b.caret(0);
    b.type("xy");
    deliver();
    expect(a.value).toBe("xy12345678ab");
    a.backspace();
    expect(a.text.toString()).toBe("xy12345678a");
  });
});

test("line ends in a field of one line are spaces there and stay in the text", () => {
  const { a } = two("one\r\ntwo", { oneLine: true });
  expect(a.value).toBe("one  two");
  a.caret(8);
  a.type("!");
  expect(a.text.toString()).toBe("one\r\ntwo!");
});

test("undo puts the caret where the words are that came back", () => {
  const { a } = two("one two three");
  const undo = new Y.UndoManager(a.text, { trackedOrigins: new Set(["keys"]) });
  a.setSelectionRange(4, 8);
  a.type("");
  expect(a.value).toBe("one three");
  a.caret(0);
  undo.undo();
  expect([a.value, a.selectionEnd]).toEqual(["one two three", 8]);
});
