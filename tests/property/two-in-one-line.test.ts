/**
 * Several people type in one line of a script at once: real editor states over real shared documents, without a
 * browser. Letters arrive late, each with its own delay; every string stays whole.
 */
import { EditorState, type Plugin, TextSelection, type Transaction } from "@tiptap/pm/state";
import { ySyncPlugin } from "@tiptap/y-tiptap";
import { describe, expect, it } from "vitest";
import * as Y from "yjs";
import { scriptFragment } from "#lib/doc/script.ts";
import { caretByLetter } from "#lib/editor/caret-by-letter.ts";
import { exactEdits } from "#lib/editor/exact-edit.ts";
import { scriptSchema } from "#lib/editor/nodes.ts";
import type { ScriptLine } from "#lib/plan/schema.ts";
import { often } from "#tests/support/long.ts";
import { Dice } from "../support/dice.ts";

const schema = scriptSchema();
const NAMES = ["amber", "BRINE", "12345", "+*-=#"] as const;
/** ms between keys: those at which strings were seen to break up, and a slow typist. */
const RHYTHMS = [60, 110, 170] as const;

/** One person's editor as its plugins see it: a state and a dispatch, but no screen. */
class Hands {
  readonly doc = new Y.Doc();
  state: EditorState;
  private readonly views: { update?: (view: never, before: EditorState) => void }[] = [];

  constructor(start: Uint8Array, clientId: number, exact: boolean) {
    this.doc.clientID = clientId;
    Y.applyUpdate(this.doc, start);
    const plugins: Plugin[] = [
      ySyncPlugin(this.doc.getXmlFragment("script")),
      ...(exact ? [caretByLetter(), exactEdits()] : []),
    ];
    this.state = EditorState.create({ schema, plugins });
    for (const plugin of plugins) {
      const view = plugin.spec.view?.(this as never);
      if (view) this.views.push(view as (typeof this.views)[number]);
    }
  }

  readonly dispatch = (tr: Transaction): void => {
    const before = this.state;
    this.state = before.apply(tr);
    for (const view of this.views) view.update?.(this as never, before);
  };
  hasFocus(): boolean {
    return false;
  }

  put(at: number): void {
    this.dispatch(this.state.tr.setSelection(TextSelection.create(this.state.doc, at)));
  }
  type(letter: string): void {
    this.dispatch(this.state.tr.insertText(letter));
  }
  get text(): string {
    return this.state.doc.textBetween(0, this.state.doc.content.size, "\n", "@");
  }
}

interface Play {
  readonly lines: readonly ScriptLine[];
  /** Each person's caret, as a position in the editor. */
  readonly carets: readonly number[];
  readonly words: readonly string[];
  readonly exact?: boolean;
}

interface Event {
  readonly at: number;
  readonly run: () => void;
}

function startOf(lines: readonly ScriptLine[]): Uint8Array {
  const doc = new Y.Doc();
  doc.clientID = 1;
  doc.getMap("seed").set("script", scriptFragment(lines));
  const made = doc.getMap("seed").get("script");
  if (made instanceof Y.XmlFragment)
    doc.getXmlFragment("script").push(made.toArray().map((line) => line.clone() as Y.XmlElement));
  return Y.encodeStateAsUpdate(doc);
}

/** Keys and deliveries in order of time. Each letter reaches every other person after its own delay, in order. */
function play({ lines, carets, words, exact = true }: Play, dice: Dice): Hands[] {
  const start = startOf(lines);
  const people = carets.map((_, i) => new Hands(start, 10 + i, exact));
  const events: Event[] = [];
  let now = 0;
  for (const [i, person] of people.entries()) {
    const heard = people.map(() => 0);
    person.doc.on("update", (update: Uint8Array, origin: unknown) => {
      if (origin === "wire") return;
      for (const [other, hands] of people.entries()) {
        if (other === i) continue;
        const at = Math.max(heard[other] ?? 0, now + 1 + dice.upTo(250));
        heard[other] = at;
        events.push({ at, run: () => Y.applyUpdate(hands.doc, update, "wire") });
      }
    });
    person.put(carets[i] ?? 1);
    const rhythm = dice.one(RHYTHMS);
    const first = dice.upTo(rhythm);
    for (const [k, letter] of [...(words[i] ?? "")].entries())
      events.push({ at: first + k * rhythm + dice.upTo(15), run: () => person.type(letter) });
  }
  while (events.length > 0) {
    const next = events.reduce((best, event, i) => (event.at < (events[best]?.at ?? 0) ? i : best), 0);
    const [event] = events.splice(next, 1);
    now = Math.max(now, event?.at ?? 0);
    event?.run();
  }
  return people;
}

const SCRIPTS: readonly (readonly ScriptLine[])[] = [
  [{ kind: "setup", text: "Hands on the bars." }],
  [
    { kind: "setup", text: "Hands on the bars." },
    { kind: "setup", text: "Feet flat." },
  ],
  [
    { kind: "setup", text: "Hands on the bars." },
    { kind: "breath", text: "Breathe out as you press." },
  ],
  [{ kind: "form", text: "Now {springs} on, slowly." }],
  [],
];

/** Every caret position in the first line. */
function placesIn(lines: readonly ScriptLine[]): number[] {
  const hands = new Hands(startOf(lines), 9, true);
  const size = hands.state.doc.firstChild?.content.size ?? 0;
  return Array.from({ length: size + 1 }, (_, i) => i + 1);
}

describe("two to four people in one line of a script", () => {
  it("keep every string whole, wherever their carets stand", () => {
    for (let seed = 1; seed <= often(60, 200); seed++) {
      const dice = new Dice(seed * 7919);
      const lines = dice.one(SCRIPTS);
      const places = placesIn(lines);
      const count = 2 + dice.upTo(3);
      const carets = Array.from({ length: count }, () => dice.one(places));
      const words = NAMES.slice(0, count);
      const people = play({ lines, carets, words }, dice);
      const text = people[0]?.text ?? "";
      for (const hands of people) expect(hands.text, `seed ${seed}`).toBe(text);
      for (const word of words) expect(text, `seed ${seed}, ${JSON.stringify({ carets, lines })}`).toContain(word);
      expect(text.length).toBe((new Hands(startOf(lines), 9, true).text + words.join("")).length);
    }
  });

  it("at the end and at the start of the only line of its kind", () => {
    const lines: readonly ScriptLine[] = [{ kind: "setup", text: "Hands on the bars." }];
    const end = placesIn(lines).at(-1) ?? 1;
    const words = [" Marta writes here now.", "Jonas begins the line. "];
    const [marta, jonas] = play({ lines, carets: [end, 1], words }, new Dice(4310));
    expect(marta?.text).toBe("Jonas begins the line. Hands on the bars. Marta writes here now.");
    expect(jonas?.text).toBe(marta?.text);
  });

  it("are broken up without it: the binding alone restores the caret by its offset", () => {
    const lines: readonly ScriptLine[] = [{ kind: "setup", text: "Hands on the bars." }];
    const end = placesIn(lines).at(-1) ?? 1;
    const words = [" Marta writes here now.", "Jonas begins the line. "];
    const [marta] = play({ lines, carets: [end, 1], words, exact: false }, new Dice(4310));
    expect(marta?.text).not.toContain(" Marta writes here now.");
  });
});
