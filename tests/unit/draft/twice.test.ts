/** What two people took at the same moment stands twice, nothing of either is lost, and one press takes one of each out. */
import { describe, expect, it } from "vitest";
import * as Y from "yjs";
import { createPlanDoc } from "#lib/doc/create.ts";
import { readItemById } from "#lib/doc/read.ts";
import { addFirstScriptLine, addScriptLine, removeRepeatedLine, type Writer } from "#lib/doc/write.ts";
import { takeTwiceOut } from "#lib/draft/twice.ts";
import type { ScriptLine } from "#lib/plan/schema.ts";
import { exampleMove, examplePlan } from "#lib/rules/define/example-plan.ts";
import { mended } from "#tests/support/mended.ts";

const FIRST: ScriptLine = { kind: "setup", text: "Carriage home, {springs}." };
const LINES: readonly ScriptLine[] = [
  { kind: "start", text: "Begin now." },
  { kind: "breath", text: "Breathe out to press." },
];
const planWith = (script: ScriptLine[]) => examplePlan([exampleMove("a", { script })]);

function take(w: Writer): void {
  addFirstScriptLine(w, "a", FIRST);
  for (const line of LINES) addScriptLine(w, "a", line);
}
const scriptIn = ({ doc }: Writer): readonly ScriptLine[] => {
  const item = readItemById(doc, "a");
  return item?.kind === "move" ? (item.script ?? []) : [];
};

describe("lines taken by two people at once", () => {
  const mine: Writer = { doc: createPlanDoc(planWith([]), { carry: true }), origin: "mine" };
  const theirs: Writer = { doc: new Y.Doc(), origin: "theirs" };
  Y.applyUpdate(theirs.doc, Y.encodeStateAsUpdate(mine.doc));
  take(mine);
  take(theirs);
  Y.applyUpdate(mine.doc, Y.encodeStateAsUpdate(theirs.doc));
  Y.applyUpdate(theirs.doc, Y.encodeStateAsUpdate(mine.doc));

  it("stand twice, each whole", () => {
    const texts = scriptIn(mine).map(({ text }) => text);
    for (const { text } of [FIRST, ...LINES]) expect(texts.filter((one) => one === text)).toHaveLength(2);
  });

  it("are offered to be taken out, one of each, and two who do it at once leave one", () => {
    const fix = takeTwiceOut(planWith([...scriptIn(mine)]));
    expect(fix?.changes).toHaveLength(3);
    for (const w of [mine, theirs]) for (const line of [FIRST, ...LINES]) removeRepeatedLine(w, "a", line);
    Y.applyUpdate(mine.doc, Y.encodeStateAsUpdate(theirs.doc));
    Y.applyUpdate(theirs.doc, Y.encodeStateAsUpdate(mine.doc));
    for (const w of [mine, theirs]) expect([...scriptIn(w)].map(({ text }) => text).sort()).toHaveLength(3);
    expect(scriptIn(mine)).toEqual(scriptIn(theirs));
  });

  it("are not offered where nothing stands twice", () => {
    const plan = planWith([FIRST, ...LINES, { kind: "form", text: "Begin now." }]);
    expect(takeTwiceOut(plan)).toBeNull();
    const twice = planWith([FIRST, FIRST]);
    const fix = takeTwiceOut(twice);
    expect(fix && takeTwiceOut(mended(twice, fix))).toBeNull();
  });
});
