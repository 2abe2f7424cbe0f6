import type { Node } from "@tiptap/pm/model";
import { EditorState } from "@tiptap/pm/state";
import { initProseMirrorDoc, updateYFragment, yXmlFragmentToProsemirrorJSON } from "@tiptap/y-tiptap";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import * as Y from "yjs";
import { createPlanDoc } from "#lib/doc/create.ts";
import { CUE_LINE, LIVE_FIELD } from "#lib/doc/layout.ts";
import { scriptOf } from "#lib/doc/read.ts";
import { readScript } from "#lib/doc/script.ts";
import { touches, unsupportedContent } from "#lib/editor/fits.ts";
import { scriptSchema } from "#lib/editor/nodes.ts";
import { CUE_KINDS, LIVE_FIELDS, type LineBegin, type ScriptLine } from "#lib/plan/schema.ts";
import { planWithScript } from "./plan-with-script.ts";

const schema = scriptSchema();

function open(lines: ScriptLine[]) {
  const doc = createPlanDoc(planWithScript(lines), { carry: true });
  const script = scriptOf(doc, "row");
  if (!script) throw new Error("the item has a script");
  return { doc, script };
}

function atOf(written: unknown): LineBegin | undefined {
  if (written === null) return undefined;
  const [word, seconds] = String(written).split(" ");
  return word === "after" ? { afterSeconds: Number(seconds) } : { leftSeconds: Number(seconds) };
}

/** What an editor would hold: its document as the lines of a plan file. */
function linesOf(root: Node): ScriptLine[] {
  const lines: ScriptLine[] = [];
  root.forEach((line) => {
    let text = "";
    line.forEach((child) => {
      text += child.isText ? (child.text ?? "").replaceAll("{", "{{") : `{${String(child.attrs.name)}}`;
    });
    const kind = CUE_KINDS.find((k) => k === line.attrs.kind) ?? "form";
    const at = atOf(line.attrs.at);
    if (text) lines.push({ kind, text, ...(at ? { at } : {}) });
  });
  return lines;
}

const words = fc.stringMatching(/^[A-Za-zäß ,.!{]{1,12}$/).map((t) => t.replaceAll("{", "{{"));
const at: fc.Arbitrary<LineBegin> = fc.oneof(
  fc.record({ afterSeconds: fc.nat(60) }),
  fc.record({ leftSeconds: fc.nat(60).map((n) => n / 4) }),
);
const lineWithoutTime = fc.record({
  kind: fc.constantFrom(...CUE_KINDS),
  text: fc
    .array(
      fc.oneof(
        words,
        fc.constantFrom(...LIVE_FIELDS).map((f) => `{${f}}`),
      ),
      { minLength: 1, maxLength: 5 },
    )
    .map((parts) => parts.join("")),
});
const line: fc.Arbitrary<ScriptLine> = fc.oneof(
  lineWithoutTime,
  fc.tuple(lineWithoutTime, at).map(([words, begins]) => ({ ...words, at: begins })),
);

describe("a script in the editor and in the document", () => {
  it("reads the same from either, and reading writes nothing", () => {
    fc.assert(
      fc.property(fc.array(line, { minLength: 1, maxLength: 8 }), (lines) => {
        const { doc, script } = open(lines);
        let updates = 0;
        doc.on("update", () => updates++);
        expect(unsupportedContent(script)).toBeNull();
        expect(readScript(script)).toEqual(lines);
        expect(linesOf(initProseMirrorDoc(script, schema).doc)).toEqual(lines);
        expect(updates).toBe(0);
      }),
      { seed: 5, numRuns: 150 },
    );
  });

  it("agrees after an editor's change, whatever was typed, split, joined or given another kind", () => {
    const edit = fc.record({
      act: fc.constantFrom("type", "split", "delete", "kind", "field"),
      at: fc.nat(400),
      length: fc.nat(6),
      kind: fc.constantFrom(...CUE_KINDS),
    });
    fc.assert(
      fc.property(fc.array(line, { minLength: 1, maxLength: 5 }), fc.array(edit, { maxLength: 12 }), (lines, edits) => {
        const { doc, script } = open(lines);
        const { doc: root, mapping } = initProseMirrorDoc(script, schema);
        let state = EditorState.create({ schema, doc: root });
        for (const e of edits) {
          const pos = Math.max(1, e.at % state.doc.content.size);
          const $pos = state.doc.resolve(pos);
          const tr = state.tr;
          if (e.act === "type") tr.insertText("new {words} ", $pos.depth === 1 ? pos : pos + 1);
          else if (e.act === "split" && $pos.depth === 1)
            tr.split(pos, 1, [{ type: schema.node(CUE_LINE).type, attrs: { kind: e.kind } }]);
          else if (e.act === "delete") tr.delete(pos, Math.min(pos + e.length, state.doc.content.size - 1));
          else if (e.act === "kind") tr.setNodeAttribute($pos.depth === 1 ? $pos.before(1) : pos, "kind", e.kind);
          else if ($pos.depth === 1) tr.insert(pos, schema.node(LIVE_FIELD, { name: "springs" }));
          state = state.apply(tr);
          updateYFragment(doc, script, state.doc, { mapping, isOMark: new Map() });
        }
        expect(unsupportedContent(script)).toBeNull();
        expect(readScript(script)).toEqual(linesOf(state.doc));
        expect(linesOf(initProseMirrorDoc(script, schema).doc)).toEqual(linesOf(state.doc));
      }),
      { seed: 9, numRuns: 200 },
    );
  });

  it("allows the empty line that a new item has", () => {
    const { script } = open([]);
    expect(unsupportedContent(script)).toBeNull();
    expect(readScript(script)).toEqual([]);
    expect(initProseMirrorDoc(script, schema).doc.childCount).toBe(1);
  });
});

describe("what the editor does not know", () => {
  const strange: Record<string, (script: Y.XmlFragment) => void> = {
    "another kind of line": (s) => s.insert(0, [new Y.XmlElement("table")]),
    "a line in a line": (s) => {
      const l = s.get(0);
      if (l instanceof Y.XmlElement) l.insert(0, [new Y.XmlElement(CUE_LINE)]);
    },
    "another atom": (s) => {
      const l = s.get(0);
      if (l instanceof Y.XmlElement) l.insert(0, [new Y.XmlElement("photo")]);
    },
    "marked-up text": (s) => {
      const l = s.get(0);
      const text = l instanceof Y.XmlElement ? l.get(0) : null;
      if (text instanceof Y.XmlText) text.format(0, 3, { strong: {} });
    },
    "an embed": (s) => {
      const l = s.get(0);
      const text = l instanceof Y.XmlElement ? l.get(0) : null;
      if (text instanceof Y.XmlText) text.insertEmbed(1, { picture: "x" });
    },
    "another attribute of a line": (s) => {
      const l = s.get(0);
      if (l instanceof Y.XmlElement) l.setAttribute("voice", "second");
    },
    "loose text": (s) => s.insert(0, [new Y.XmlText("loose")]),
    "a live field with something in it": (s) => {
      const field = new Y.XmlElement(LIVE_FIELD);
      field.setAttribute("name", "side");
      field.insert(0, [new Y.XmlText("left")]);
      const l = s.get(0);
      if (l instanceof Y.XmlElement) l.insert(0, [field]);
    },
  };

  it.each(Object.keys(strange))("is named instead of being shown: %s", (name) => {
    const { script } = open([{ kind: "form", text: "Elbows close." }]);
    strange[name]?.(script);
    expect(unsupportedContent(script)).toMatch(/\w/);
  });

  it("would be lost by showing it, which is why it is checked first", () => {
    const { doc, script } = open([{ kind: "form", text: "Elbows close." }]);
    strange["another kind of line"]?.(script);
    let updates = 0;
    doc.on("update", () => updates++);
    initProseMirrorDoc(script, schema);
    expect(updates).toBeGreaterThan(0);
    expect(JSON.stringify(yXmlFragmentToProsemirrorJSON(script))).not.toContain("table");
  });

  it("keeps an unknown kind of cue and an unknown live field: they are only words", () => {
    const { doc, script } = open([{ kind: "form", text: "Elbows {side}." }]);
    const l = script.get(0);
    if (!(l instanceof Y.XmlElement)) throw new Error("there is a line");
    l.setAttribute("kind", "music");
    const field: unknown = l.get(1);
    if (field instanceof Y.XmlElement) field.setAttribute("name", "room-heat");
    expect(unsupportedContent(script)).toBeNull();
    const { doc: root, mapping } = initProseMirrorDoc(script, schema);
    const state = EditorState.create({ schema, doc: root });
    const typed = state.apply(state.tr.insertText("Now: ", 1));
    updateYFragment(doc, script, typed.doc, { mapping, isOMark: new Map() });
    expect(script.toString()).toContain('kind="music"');
    expect(script.toString()).toContain('name="room-heat"');
  });

  it("is noticed in others' changes before the editor applies them", () => {
    const { doc, script } = open([{ kind: "form", text: "Elbows close." }]);
    const other = new Y.Doc();
    Y.applyUpdate(other, Y.encodeStateAsUpdate(doc));
    const theirs = scriptOf(other, "row");
    if (theirs) strange["another atom"]?.(theirs);
    const seen: (string | null)[] = [];
    const order: string[] = [];
    doc.on("beforeObserverCalls", (transaction: Y.Transaction) => {
      order.push("look");
      if (touches(transaction, script)) seen.push(unsupportedContent(script));
    });
    script.observeDeep(() => order.push("observer"));
    Y.applyUpdate(doc, Y.encodeStateAsUpdate(other));
    expect(seen).toEqual(["a part called “photo”"]);
    expect(order[0]).toBe("look");
    doc.getMap("head").set("lengthSeconds", 900);
    expect(seen.length).toBe(1);
  });
});
