/** Adding a line before all others: with its live fields, into an empty script too, and beside somebody who is typing. */
import { describe, expect, it } from "vitest";
import * as Y from "yjs";
import { createPlanDoc } from "#lib/doc/create.ts";
import { readItemById } from "#lib/doc/read.ts";
import { addFirstScriptLine, addScriptLine, addSetupEnd, removeRepeatedLine, type Writer } from "#lib/doc/write.ts";
import type { ScriptLine } from "#lib/plan/schema.ts";
import { exampleMove, examplePlan } from "#lib/rules/define/example-plan.ts";

const FIRST: ScriptLine = { kind: "setup", text: "Carriage home, {springs}." };
const KNEEL: ScriptLine = { kind: "setup", text: "Kneel tall." };

function writer(script: ScriptLine[]): Writer {
  return { doc: createPlanDoc(examplePlan([exampleMove("a", { script })]), { carry: true }), origin: "test" };
}
function pair(script: ScriptLine[]): [Writer, Writer] {
  const mine = writer(script);
  const theirs: Writer = { doc: new Y.Doc(), origin: "other" };
  Y.applyUpdate(theirs.doc, Y.encodeStateAsUpdate(mine.doc));
  return [mine, theirs];
}
function meet(a: Writer, b: Writer): void {
  Y.applyUpdate(a.doc, Y.encodeStateAsUpdate(b.doc));
  Y.applyUpdate(b.doc, Y.encodeStateAsUpdate(a.doc));
}
function scriptIn(doc: Y.Doc): readonly ScriptLine[] {
  const item = readItemById(doc, "a");
  return item?.kind === "move" ? (item.script ?? []) : [];
}

describe("a line put first", () => {
  it("goes before the others", () => {
    const w = writer([KNEEL]);
    addFirstScriptLine(w, "a", FIRST);
    expect(scriptIn(w.doc)).toEqual([FIRST, KNEEL]);
  });

  it("goes beside the empty line of a script without words, which does not count as a line", () => {
    const w = writer([]);
    addFirstScriptLine(w, "a", FIRST);
    expect(scriptIn(w.doc)).toEqual([FIRST]);
  });

  it("added by two people in the same second it is there whole, twice; two who remove one remove the same", () => {
    for (const script of [[], [KNEEL]]) {
      const [mine, theirs] = pair(script);
      addFirstScriptLine(mine, "a", FIRST);
      addFirstScriptLine(theirs, "a", FIRST);
      meet(mine, theirs);
      expect(scriptIn(mine.doc)).toEqual([FIRST, FIRST, ...script]);
      expect(scriptIn(theirs.doc)).toEqual(scriptIn(mine.doc));
      removeRepeatedLine(mine, "a", FIRST);
      removeRepeatedLine(theirs, "a", FIRST);
      meet(mine, theirs);
      expect(scriptIn(mine.doc)).toEqual([FIRST, ...script]);
      removeRepeatedLine(mine, "a", FIRST);
      expect(scriptIn(mine.doc)).toEqual([FIRST, ...script]);
    }
  });

  it("keeps what somebody else writes at the same moment", () => {
    const [mine, theirs] = pair([KNEEL]);
    addFirstScriptLine(mine, "a", FIRST);
    addScriptLine(theirs, "a", { kind: "breath", text: "Out." });
    Y.applyUpdate(mine.doc, Y.encodeStateAsUpdate(theirs.doc));
    expect(scriptIn(mine.doc)).toEqual([FIRST, KNEEL, { kind: "breath", text: "Out." }]);
  });

  it("added after the set-up goes behind the last set-up line with words", () => {
    const w = writer([KNEEL, { kind: "setup", text: "" }, { kind: "breath", text: "Out." }]);
    addSetupEnd(w, "a", FIRST);
    expect(scriptIn(w.doc)).toEqual([KNEEL, FIRST, { kind: "breath", text: "Out." }]);
    const silent = writer([{ kind: "breath", text: "Out." }]);
    addSetupEnd(silent, "a", FIRST);
    expect(scriptIn(silent.doc)).toEqual([FIRST, { kind: "breath", text: "Out." }]);
  });

  it("does nothing for an item that does not exist", () => {
    const w = writer([KNEEL]);
    addFirstScriptLine(w, "gone", FIRST);
    expect(scriptIn(w.doc)).toEqual([KNEEL]);
  });
});
