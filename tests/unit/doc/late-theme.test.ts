/** The theme of a plan from before it was a shared text: migrated once, and again whenever an old copy comes back. */
import { describe, expect, test } from "vitest";
import * as Y from "yjs";
import { createPlanDoc } from "#lib/doc/create.ts";
import { carryLateThemes } from "#lib/doc/late-theme.ts";
import { PLAN_DOC_VERSION, planParts, THEME_OF_V1 } from "#lib/doc/layout.ts";
import { migrate } from "#lib/doc/migrate.ts";
import { readPlan } from "#lib/doc/read.ts";
import { setText } from "#lib/doc/write.ts";
import { examplePlan } from "#lib/rules/define/example-plan.ts";

const plan = examplePlan([]);
const studio = { moves: plan.moves, equipment: plan.equipment };
const themeOf = (doc: Y.Doc) => readPlan(doc, studio).theme?.name;

/** A document as version 1 wrote it. */
function oldDoc(theme?: string): Y.Doc {
  const doc = createPlanDoc(plan, { carry: false });
  planParts(doc).meta.set("version", 1);
  if (theme !== undefined) setOld(doc, theme);
  return doc;
}

const setOld = (doc: Y.Doc, theme: string) => planParts(doc).head.set(THEME_OF_V1, theme);
const stateOf = (doc: Y.Doc) => Y.encodeStateAsUpdate(doc);
function copyOf(doc: Y.Doc, clientID?: number): Y.Doc {
  const copy = new Y.Doc();
  if (clientID !== undefined) copy.clientID = clientID;
  Y.applyUpdate(copy, stateOf(doc));
  return copy;
}

/** What the server makes of a document and of copies that come back to it, each in a transaction of its own. */
function served(doc: Y.Doc) {
  migrate(doc);
  const carry = carryLateThemes(doc);
  const take = (copy: Y.Doc) => {
    Y.applyUpdate(doc, stateOf(copy));
    carry();
  };
  return { doc, take, write: (words: string) => setText({ doc, origin: 1 }, planParts(doc).theme, words) };
}

test("a document of version 1 is migrated once, and its old key stays", () => {
  const doc = oldDoc("Pull and press");
  expect(migrate(doc)).toEqual({ kind: "migrated", from: 1 });
  expect([themeOf(doc), planParts(doc).meta.get("version")]).toEqual(["Pull and press", PLAN_DOC_VERSION]);
  expect(planParts(doc).head.get(THEME_OF_V1)).toBe("Pull and press");
  const before = stateOf(doc);
  expect(migrate(doc)).toEqual({ kind: "current" });
  expect(stateOf(doc)).toEqual(before);
  const none = oldDoc();
  migrate(none);
  expect(themeOf(none)).toBeUndefined();
});

describe("a copy of version 1 comes back with a theme set in it", () => {
  test("it becomes the theme where nobody has written since", () => {
    const old = oldDoc("Upper body");
    const copy = copyOf(old);
    setOld(copy, "Upper");
    setOld(copy, "Upper body and core");
    const server = served(old);
    server.take(copy);
    expect(themeOf(server.doc)).toBe("Upper body and core");
    server.take(copy);
    expect(themeOf(server.doc), "offered again it says nothing new").toBe("Upper body and core");
  });

  test("both people's words are there where somebody has written since", () => {
    const old = oldDoc("Upper body");
    const copy = copyOf(old);
    setOld(copy, "Upper body and core");
    const server = served(old);
    server.write("Slow upper body");
    server.take(copy);
    expect(themeOf(server.doc)).toBe("Slow upper body, Upper body and core");
  });

  test("it becomes the first theme of a plan that had none", () => {
    const old = oldDoc();
    const copy = copyOf(old);
    setOld(copy, "Balance");
    const server = served(old);
    server.take(copy);
    expect(themeOf(server.doc)).toBe("Balance");
  });

  test("removing the theme there removes it, but words written since stay", () => {
    const old = oldDoc("Upper body");
    const copies = [copyOf(old), copyOf(old)] as const;
    for (const copy of copies) planParts(copy).head.delete(THEME_OF_V1);
    const server = served(copyOf(old));
    server.take(copies[0]);
    expect(themeOf(server.doc)).toBeUndefined();
    const other = served(copyOf(old));
    other.write("Upper body, slow");
    other.take(copies[1]);
    expect(themeOf(other.doc)).toBe("Upper body, slow");
    const set = copyOf(old);
    setOld(set, "Core");
    planParts(set).head.delete(THEME_OF_V1);
    const third = served(copyOf(old));
    third.take(set);
    expect(themeOf(third.doc), "set, then taken away").toBeUndefined();
  });

  // Of two values for one key yjs keeps the one from the greater id: the copy's wins, and the copy's loses.
  test.each([1, 2 ** 31])("set by two people at once under version 1: neither's words are lost (%i)", (clientID) => {
    const old = oldDoc("Upper body");
    old.clientID = 1000;
    const copy = copyOf(old, clientID);
    setOld(copy, "Pull");
    setOld(old, "Press");
    const server = served(old);
    server.take(copy);
    expect(themeOf(server.doc)).toBe("Press, Pull");
  });

  test.each([false, true])("two copies, each with one; together in one update: %s", (together) => {
    const old = oldDoc("Upper body");
    const [one, other] = [copyOf(old, 11), copyOf(old, 22)];
    setOld(one, "Pull");
    setOld(other, "Press");
    const server = served(old);
    if (together) Y.applyUpdate(other, stateOf(one));
    else server.take(one);
    server.take(other);
    // Once the two had met, under version 1, one of them had won already.
    expect(themeOf(server.doc)).toBe(together ? "Press" : "Pull, Press");
  });
});
