/** A line said before all others: with its live fields, into an empty script too, and beside somebody who types. */
import { describe, expect, it } from "vitest";
import * as Y from "yjs";
import { createPlanDoc } from "#lib/doc/create.ts";
import { readItemById } from "#lib/doc/read.ts";
import { addFirstScriptLine, addScriptLine, type Writer } from "#lib/doc/write.ts";
import type { ScriptLine } from "#lib/plan/schema.ts";
import { examplePlan, move } from "#lib/rules/examples/build.ts";

const FIRST: ScriptLine = { kind: "setup", text: "Carriage home, {springs}." };
const KNEEL: ScriptLine = { kind: "setup", text: "Kneel tall." };

function writer(script: ScriptLine[]): Writer {
  return { doc: createPlanDoc(examplePlan([move("a", { script })]), { carry: true }), origin: "test" };
}
function scriptIn(doc: Y.Doc): readonly ScriptLine[] {
  const item = readItemById(doc, "a");
  return item?.kind === "move" ? (item.script ?? []) : [];
}

describe("a line put first", () => {
  it("stands before the others", () => {
    const w = writer([KNEEL]);
    addFirstScriptLine(w, "a", FIRST);
    expect(scriptIn(w.doc)).toEqual([FIRST, KNEEL]);
  });

  it("fills the empty line of a script without words", () => {
    const w = writer([]);
    addFirstScriptLine(w, "a", FIRST);
    expect(scriptIn(w.doc)).toEqual([FIRST]);
  });

  it("keeps what somebody else writes at the same moment", () => {
    const mine = writer([KNEEL]);
    const theirs: Writer = { doc: new Y.Doc(), origin: "other" };
    Y.applyUpdate(theirs.doc, Y.encodeStateAsUpdate(mine.doc));
    addFirstScriptLine(mine, "a", FIRST);
    addScriptLine(theirs, "a", { kind: "breath", text: "Out." });
    Y.applyUpdate(mine.doc, Y.encodeStateAsUpdate(theirs.doc));
    expect(scriptIn(mine.doc)).toEqual([FIRST, KNEEL, { kind: "breath", text: "Out." }]);
  });

  it("is nothing for an item that is not there", () => {
    const w = writer([KNEEL]);
    addFirstScriptLine(w, "gone", FIRST);
    expect(scriptIn(w.doc)).toEqual([KNEEL]);
  });
});
