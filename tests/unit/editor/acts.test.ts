import { EditorState, TextSelection } from "@tiptap/pm/state";
import { describe, expect, it } from "vitest";
import { classClock } from "#lib/clock/clock.ts";
import { cueTrack } from "#lib/cues/cue-track.ts";
import { copiedText, withoutCopied } from "#lib/editor/copied.ts";
import { itemFacts, NO_FACTS } from "#lib/editor/item-facts.ts";
import {
  editorLineAt,
  kindsOf,
  lineText,
  withAllWords,
  withKind,
  withNewLine,
  withoutAllWords,
  withoutEmptyLine,
} from "#lib/editor/lines.ts";
import { scriptSchema } from "#lib/editor/nodes.ts";
import { withPasted } from "#lib/editor/paste.ts";
import { linesFromText } from "#lib/editor/pasted.ts";
import { stockLines } from "#lib/editor/stock.ts";
import { CUE_KINDS, type ScriptLine } from "#lib/plan/schema.ts";
import { parseScriptText } from "#lib/plan/script-text.ts";
import { planWithScript } from "./plan-with-script.ts";

const schema = scriptSchema();

/** `|` is where the caret stands; two make a selection. */
function open(...lines: string[]): EditorState {
  const marks: number[] = [];
  let pos = 0;
  const nodes = lines.map((line) => {
    const [kind, words] = line.split(": ");
    const content = (words ?? "").split("|").flatMap((part, i) => {
      const pieces = part === "" ? [] : [schema.text(part)];
      if (i > 0) marks.push(pos + 1 + (words ?? "").split("|").slice(0, i).join("").length);
      return pieces;
    });
    const node = schema.node("cueLine", { kind }, content);
    pos += node.nodeSize;
    return node;
  });
  const doc = schema.node("doc", null, nodes);
  const from = marks[0] ?? 1;
  return EditorState.create({ schema, doc, selection: TextSelection.create(doc, from, marks[1] ?? from) });
}
const read = (state: EditorState): string[] => {
  const lines: string[] = [];
  state.doc.forEach((line) => {
    lines.push(`${String(line.attrs.kind)}: ${lineText(line)}`);
  });
  return lines;
};
const apply = (state: EditorState, tr: ReturnType<typeof withKind>): EditorState => (tr ? state.apply(tr) : state);

describe("all words deleted", () => {
  it("leave the first line, empty, with its kind, whether they were selected by key or by hand", () => {
    const all = open("setup: Kneel", "form: Long neck");
    const selected = all.apply(withAllWords(all));
    for (const state of [selected, open("setup: |Kneel", "form: Long neck|")]) {
      expect(read(apply(state, withoutAllWords(state)))).toEqual(["setup: "]);
      expect(read(state.apply(withoutCopied(state)))).toEqual(["setup: "]);
    }
    expect(read(selected.apply(selected.tr.insertText("Stand")))).toEqual(["setup: Stand"]);
    expect(withoutAllWords(open("setup: |Kneel", "form: Long| neck"))).toBeNull();
    expect(withoutAllWords(open("setup: |"))).toBeNull();
  });
});

describe("a new line", () => {
  it("comes after a whole line with the next kind that is missing, its caret in it", () => {
    const next = (() => {
      const state = open("setup: Kneel|", "start: Go");
      return apply(state, withNewLine(state));
    })();
    expect(read(next)).toEqual(["setup: Kneel", "breath: ", "start: Go"]);
    expect(editorLineAt(next.doc, next.selection.from)?.index).toBe(1);
  });
  it("keeps the kind of a line that is split, and makes room before a line at its start", () => {
    const split = open("form: Long neck,| soft knees");
    expect(read(apply(split, withNewLine(split)))).toEqual(["form: Long neck,", "form:  soft knees"]);
    const start = open("form: |Long neck");
    expect(read(apply(start, withNewLine(start)))).toEqual(["form: ", "form: Long neck"]);
  });
  it("replaces the selection", () => {
    const state = open("form: Long| neck|");
    expect(read(apply(state, withNewLine(state)))).toEqual(["form: Long", "focus: "]);
  });
});

describe("an empty line", () => {
  it("is removed by Backspace unless it is the only one", () => {
    const state = open("form: Long neck", "focus: |", "crew: Wide");
    expect(read(apply(state, withoutEmptyLine(state)))).toEqual(["form: Long neck", "crew: Wide"]);
    const first = open("focus: |", "crew: Wide");
    expect(read(apply(first, withoutEmptyLine(first)))).toEqual(["crew: Wide"]);
    expect(withoutEmptyLine(open("focus: |"))).toBeNull();
    expect(withoutEmptyLine(open("focus: |Feel it", "crew: Wide"))).toBeNull();
  });
});

describe("kinds", () => {
  it("change for every line the selection touches and no other", () => {
    const state = open("form: a", "form: b|b", "form: c|", "form: d");
    expect(kindsOf(apply(state, withKind(state, "safety")).doc)).toEqual(["form", "safety", "safety", "form"]);
    const caret = open("form: a|", "form: b");
    expect(kindsOf(apply(caret, withKind(caret, "crew")).doc)).toEqual(["crew", "form"]);
    expect(withKind(caret, "form")).toBeNull();
  });
});

describe("pasting", () => {
  it("continues at the caret and gives an empty line the pasted kind", () => {
    const state = open("form: Long |neck");
    const pasted = apply(state, withPasted(state, linesFromText("and \nSafety: stop {side}\nsoft ").lines));
    expect(read(pasted)).toEqual(["form: Long and", "safety: stop {side}", "form: soft neck"]);
    const empty = open("setup: |");
    expect(read(apply(empty, withPasted(empty, linesFromText("Safety: stop").lines)))).toEqual(["safety: stop"]);
    expect(withPasted(empty, [])).toBeNull();
  });
});

describe("facts of an item's script", () => {
  const script: ScriptLine[] = [{ kind: "form", text: "{seconds-left} left, {springs}, {side}, then {next-move}." }];
  const plan = planWithScript(script);
  const timed = { plan, ...classClock(plan), track: cueTrack(plan) };

  it("come from the plan: springs, side, the next move", () => {
    const facts = itemFacts(timed, "row");
    expect(facts.fieldSays("springs", "form", script[0]?.text ?? "")).toContain("light");
    expect(facts.fieldSays("side", "form", "")).toContain("left");
    expect(facts.fieldSays("side", "form", "{side} side first.")).toBe("Left");
    expect(facts.fieldSays("next-move", "form", "")).toBe("Kneeling row");
    expect(facts.fieldSays("room-heat", "form", "")).toBe("room-heat");
  });
  it("give the seconds of each line that is said, and none for crew or empty lines", () => {
    const facts = itemFacts(timed, "row");
    expect(facts.secondsOf("form", "Long neck, soft knees.")).toBeGreaterThan(0.5);
    expect(facts.secondsOf("crew", "Wide, from the side.")).toBeNull();
    expect(facts.secondsOf("form", " ")).toBeNull();
  });
  it("are only field names for an item that is not a move", () => {
    expect(itemFacts(timed, "start")).toBe(NO_FACTS);
    expect(NO_FACTS.fieldSays("next-move", "form", "")).toBe("next move");
  });
});

describe("copying and cutting", () => {
  const pasted = (text: string, into: EditorState) => apply(into, withPasted(into, linesFromText(text).lines));

  it("gives just words for part of a line, and the kind too for a whole line", () => {
    expect(copiedText(open("safety: Stand if |knees| mind"))).toBe("knees");
    expect(copiedText(open("safety: |Stand if knees mind|"))).toBe("safety: Stand if knees mind");
    expect(copiedText(open("setup: Kneel |down", "form: Long| neck"))).toBe("set-up: down\nform: Long");
    expect(copiedText(open("setup: |Kneel down", "form: |Long neck"))).toBe("set-up: Kneel down");
    expect(copiedText(open("setup: Kneel| down"))).toBe("");
  });
  it("keeps kind and live fields into another script: a line of its own beside words, or in the empty line", () => {
    const line = schema.node("cueLine", { kind: "focus" }, [
      schema.text("Next: "),
      schema.node("liveField", { name: "next-move" }),
    ]);
    const doc = schema.node("doc", null, [line]);
    const from = EditorState.create({ doc, selection: TextSelection.create(doc, 1, line.content.size + 1) });
    const text = copiedText(from);
    expect(text).toBe("focus: Next: {next-move}");
    expect(read(pasted(text, open("setup: |")))).toEqual(["focus: Next: {next-move}"]);
    expect(read(pasted(text, open("form: Long neck|", "crew: wide")))).toEqual([
      "form: Long neck",
      "focus: Next: {next-move}",
      "crew: wide",
    ]);
    const before = pasted(text, open("form: |Long neck"));
    expect(read(before)).toEqual(["focus: Next: {next-move}", "form: Long neck"]);
    expect(editorLineAt(before.doc, before.selection.from)?.index).toBe(0);
    expect(before.doc.firstChild?.lastChild?.type.name).toBe("liveField");
    expect(read(pasted(text, open("form: Long| neck")))).toEqual(["form: LongNext: {next-move} neck"]);
  });
  it("keeps every kind", () => {
    for (const kind of CUE_KINDS) {
      const text = copiedText(open(`${kind}: |Safety first|`));
      expect(read(pasted(text, open("form: |")))).toEqual([`${kind}: Safety first`]);
    }
  });
  it("leaves no empty line behind whole lines, and one when nothing else is left", () => {
    const cut = (state: EditorState) => read(state.apply(withoutCopied(state)));
    expect(cut(open("setup: Kneel", "form: |Long neck|", "crew: wide"))).toEqual(["setup: Kneel", "crew: wide"]);
    expect(cut(open("setup: |Kneel", "form: Long neck|", "crew: wide"))).toEqual(["crew: wide"]);
    expect(cut(open("form: |Long neck|"))).toEqual(["form: "]);
    expect(cut(open("form: Long| neck|"))).toEqual(["form: Long"]);
  });
});

describe("lines from the library", () => {
  const move = planWithScript([]).moves["kneeling-row"];
  it("are offered until the script has them, and are valid in a plan file", () => {
    const rich = move && { ...move, easier: ["Sit {instead}."], harder: ["Pause."] };
    const offered = stockLines(rich, []);
    expect(offered.map((l) => l.kind)).toEqual(["safety", "easier", "harder"]);
    for (const line of offered) expect(parseScriptText(line.text).ok).toBe(true);
    expect(stockLines(rich, [{ kind: "harder", text: "pause" }]).map((l) => l.kind)).toEqual(["safety", "easier"]);
    expect(stockLines(undefined, [])).toEqual([]);
  });
});
