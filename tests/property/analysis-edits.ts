/** Edits of a plan's document that reach everything an analysis reads, the studio included. */
import * as Y from "yjs";
import type { StudioContext } from "#lib/doc/from-studio.ts";
import { planParts } from "#lib/doc/layout.ts";
import { labelOf, orderedIds, scriptOf } from "#lib/doc/read.ts";
import {
  addScriptLine,
  deleteItem,
  insertItem,
  setExpected,
  setHead,
  setItemField,
  setSpring,
  setText,
  setThemeShare,
  type Writer,
} from "#lib/doc/write.ts";
import {
  CUE_KINDS,
  EXPECTED_CAUTIONS,
  FACINGS,
  GROUPS,
  ITEM_SIDES,
  type Move,
  type ScriptLine,
} from "#lib/plan/schema.ts";
import { ACT_KINDS, type Act, doAct, type Ledger } from "#tests/property/acts.ts";
import type { Dice } from "#tests/support/dice.ts";

/** A document being written in, and the studio that lends it moves, machines and standards. */
export interface Edited {
  readonly doc: Y.Doc;
  studio: StudioContext;
  readonly ledger: Ledger;
}

type Edit = (w: Writer, dice: Dice, at: Edited) => void;

const SAID = [
  "This is the last move of the class.",
  "{minutes-left} minutes left, then {next-move}.",
  "Thirty seconds left. Other side next.",
  "{springs}, carriage home, {side} side.",
  "Three rounds. Two light on.",
  "Keep breathing, long neck, ribs down, and slow, slow, slow as you come back to the front. ",
];
/** More items only make fresh answers slow and find nothing new. */
const MOST_ITEMS = 10;
const MOST_LINES = 6;

const EDITS: readonly Edit[] = [
  (w, dice) => on(w, dice, (id) => addFew(w, id, { kind: pick(dice, CUE_KINDS), text: pick(dice, SAID) })),
  (w, dice) => on(w, dice, (id) => dropLine(w, id)),
  (w, dice) => on(w, dice, (id) => typeIn(w, id, dice)),
  (w, dice) => on(w, dice, (id) => typeIn(w, id, dice)),
  (w, dice) => on(w, dice, (id) => setItemField(w, id, "seconds", 5 + dice.upTo(400) / 2)),
  (w, dice) => on(w, dice, (id) => setItemField(w, id, "transitionSeconds", pick(dice, [undefined, 0, 3.5, 12, 40]))),
  (w, dice) => on(w, dice, (id) => setItemField(w, id, "side", pick(dice, ITEM_SIDES))),
  (w, dice) => on(w, dice, (id) => setItemField(w, id, "facing", pick(dice, [undefined, ...FACINGS]))),
  (w, dice) => on(w, dice, (id) => setItemField(w, id, "offsetMm", pick(dice, [undefined, 80, -60, 500]))),
  (w, dice) => on(w, dice, (id) => setItemField(w, id, "range", pick(dice, [undefined, [20, 40], [60, 200]]))),
  (w, dice, { studio }) =>
    on(w, dice, (id) => setItemField(w, id, "move", pick(dice, [...Object.keys(studio.moves), "gone"]))),
  (w, dice, { studio }) =>
    on(w, dice, (id) =>
      setSpring(w, id, pick(dice, [...studio.equipment.springs.map((s) => s.id), "lost"]), dice.upTo(5)),
    ),
  (w, dice) =>
    setHead(w, pick(dice, ["headsUpSeconds", "countInSeconds", "closingSeconds"]), pick(dice, [undefined, 0, 5, 25])),
  (w, dice) => setHead(w, "people", pick(dice, [undefined, 1, 10, 40])),
  (w, dice) => setHead(w, "level", pick(dice, [undefined, "first-time", "experienced"])),
  (w, dice) => setThemeShare(w, pick(dice, GROUPS), pick(dice, [undefined, 0.2, 0.6])),
  (w, dice) => setExpected(w, pick(dice, EXPECTED_CAUTIONS), dice.upTo(2) > 0, dice.upTo(9)),
  (w, dice) => setText(w, planParts(w.doc).title, `Class ${dice.upTo(50)}`),
  (w, dice) => setText(w, planParts(w.doc).notes, `Notes ${dice.upTo(50)}`),
  (w, dice) => {
    const label = labelOf(w.doc, pick(dice, orderedIds(w.doc)));
    if (label) setText(w, label, pick(dice, ["Arms", "Handles down, drink.", "Carriage home."]));
  },
  (w, dice, { ledger }) =>
    insertItem(
      w,
      pick(dice, orderedIds(w.doc)),
      pick(dice, [
        { id: ledger.id(), kind: "pause", seconds: 20, text: "Handles down." } as const,
        { id: ledger.id(), kind: "heading", title: "Legs" } as const,
      ]),
    ),
  (_, dice, at) => {
    at.studio = { ...at.studio, moves: withAnother(at.studio.moves, dice) };
  },
  (_, dice, at) => {
    const { equipment } = at.studio;
    const springs = equipment.springs.map((s) => ({
      ...s,
      count: pick(dice, [1, 2, 4]),
      label: pick(dice, [s.label, "Blue"]),
    }));
    at.studio = { ...at.studio, equipment: { ...equipment, springs } };
  },
  (_, dice, at) => {
    const limits = { maxSilenceSeconds: pick(dice, [10, 45]) };
    const level = pick(dice, ["off", "must", "info"] as const);
    at.studio = { ...at.studio, standards: { "silent-stretch": { limits }, [pick(dice, LEVELLED)]: { level } } };
  },
];
const LEVELLED = ["missing-cue", "says-otherwise", "uneven-sides", "change-not-told"];

/** Picks from a list that may contain undefined. */
const pick = <T>(dice: Dice, list: readonly T[]): T => list[dice.upTo(list.length)] as T;

/** One edit; every third one is one of the program's own acts. */
export function editOnce(at: Edited, dice: Dice): void {
  const w = { doc: at.doc, origin: "edit" };
  const ids = orderedIds(at.doc);
  if (ids.length > MOST_ITEMS) deleteItem(w, pick(dice, ids), 1);
  if (dice.upTo(3) > 0 && ids.length > 0) pick(dice, EDITS)(w, dice, at);
  else doAct(at.doc, actOf(dice), at.ledger);
}

const actOf = (dice: Dice): Act => ({ kind: dice.upTo(ACT_KINDS), on: dice.upTo(1000), to: dice.upTo(1000) });

function on(w: Writer, dice: Dice, change: (id: string) => void): void {
  const { items } = planParts(w.doc);
  const moves = orderedIds(w.doc).filter((id) => items.get(id)?.get("kind") === "move");
  if (moves.length > 0) change(pick(dice, moves));
}

function addFew(w: Writer, id: string, line: ScriptLine): void {
  if ((scriptOf(w.doc, id)?.length ?? 0) < MOST_LINES) addScriptLine(w, id, line);
  else dropLine(w, id);
}

function dropLine(w: Writer, id: string): void {
  const script = planParts(w.doc).items.get(id)?.get("script") as Y.XmlFragment | undefined;
  if (script && script.length > 1) w.doc.transact(() => script.delete(script.length - 1, 1), w.origin);
}

/** A letter, or a word that claims something about the plan, anywhere in any line of an item. */
function typeIn(w: Writer, id: string, dice: Dice): void {
  const lines = scriptOf(w.doc, id)?.toArray() ?? [];
  const texts = lines.flatMap((line) => (line instanceof Y.XmlElement ? line.toArray() : []));
  const text = texts.length > 0 ? pick(dice, texts) : undefined;
  if (!(text instanceof Y.XmlText)) return;
  const at = dice.upTo(text.length + 1);
  w.doc.transact(() => text.insert(at, pick(dice, ["a", "e", " ", ". Last one. ", " two springs "])), w.origin);
}

function withAnother(moves: StudioContext["moves"], dice: Dice): Record<string, Move> {
  const id = pick(dice, Object.keys(moves));
  const move = moves[id];
  if (!move) return { ...moves };
  return {
    ...moves,
    [id]: {
      ...move,
      name: `${move.name.slice(0, 20)} ${dice.upTo(9)}`,
      tempo: pick(dice, [move.tempo, { holdSeconds: true }]),
    },
  };
}
