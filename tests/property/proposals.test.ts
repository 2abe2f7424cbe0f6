/**
 * Proposals (INV-29): what a lead changed in a copy arrives as it was meant, whatever was written meanwhile; a part that
 * no longer fits, or is taken twice, changes nothing; one undo takes everything back.
 */
import { describe, expect, it } from "vitest";
import * as Y from "yjs";
import { planUndo } from "#app/_session/plan-undo.ts";
import { createPlanDoc } from "#lib/doc/create.ts";
import { takenProposals } from "#lib/doc/proposal-marks.ts";
import { readItems, readPlan, scriptOf } from "#lib/doc/read.ts";
import { lineIdsOf, lineIdsOfItem, takeProposal } from "#lib/doc/take-proposal.ts";
import { deleteItem, moveItem, setItemField, setSpring, type Writer } from "#lib/doc/write.ts";
import { CUE_KINDS, FACINGS, ITEM_SIDES, type MoveItem, type Plan, planSchema } from "#lib/plan/schema.ts";
import { applied, fits } from "#lib/proposal/fits.ts";
import { type EditedLine, partsOf } from "#lib/proposal/of-edit.ts";
import { type ProposalPart, proposalPartsSchema } from "#lib/proposal/parts.ts";
import { mergedText } from "#lib/proposal/words-diff.ts";
import { Dice } from "../support/dice.ts";
import { often } from "../support/long.ts";
import { SMALL_PLAN } from "../support/sync-server.ts";

const STUDIO = { moves: SMALL_PLAN.moves, equipment: SMALL_PLAN.equipment };
const WORDS = [
  "press",
  "the carriage",
  "back",
  "{side}",
  "slowly",
  "and",
  "{{ brace",
  "breathe",
  "out",
  "é",
  "{springs}",
];

const sentence = (dice: Dice): string =>
  Array.from({ length: 1 + dice.upTo(6) }, () => dice.one(WORDS)).join(dice.one([" ", ", "]));
const line = (dice: Dice) => ({ kind: dice.one(CUE_KINDS), text: sentence(dice) });

function randomPlan(dice: Dice): Plan {
  const move = (n: number): MoveItem => ({
    ...{ id: `m${n}`, kind: "move", move: "kneeling-row", side: dice.one(ITEM_SIDES), seconds: 30 + dice.upTo(60) },
    springs: dice.upTo(2) === 0 ? {} : { firm: 1 + dice.upTo(2) },
    ...(dice.upTo(2) === 0 ? { facing: dice.one(FACINGS) } : {}),
    ...(dice.upTo(3) === 0 ? {} : { script: Array.from({ length: 1 + dice.upTo(5) }, () => line(dice)) }),
  });
  const items = Array.from({ length: 3 + dice.upTo(6) }, (_, n) =>
    dice.upTo(4) === 0 ? ({ id: `m${n}`, kind: "heading", title: `Block ${n}` } as const) : move(n),
  );
  return { ...SMALL_PLAN, items };
}

/** A copy of one plate after some edits, with where each of its lines came from. */
function editedCopy(dice: Dice, item: MoveItem): { item: MoveItem; lines: EditedLine[] } {
  const lines: EditedLine[] = (item.script ?? []).map(({ kind, text }, from) => ({ kind, text, from }));
  for (let times = dice.upTo(5); times > 0; times--) {
    const at = dice.upTo(lines.length + 1);
    const [one] = lines.slice(at, at + 1);
    const how = dice.upTo(5);
    if (how === 0 || !one) lines.splice(at, 0, { ...line(dice), from: null });
    else if (how === 1) lines.splice(at, 1);
    else if (how === 2) lines.splice(at, 1, { ...one, text: `${one.text}, ${sentence(dice)}` });
    else if (how === 3) lines.splice(at, 1, { ...one, ...line(dice) });
    else lines.splice(dice.upTo(lines.length), 0, ...lines.splice(at, 1));
  }
  const { script: _script, facing: _facing, ...rest } = item;
  const edited: MoveItem = {
    ...rest,
    ...(dice.upTo(2) === 0 ? { seconds: 20 + dice.upTo(90) } : {}),
    ...(dice.upTo(3) === 0 ? { side: dice.one(ITEM_SIDES) } : {}),
    ...(dice.upTo(3) === 0 ? { offsetMm: 1 + dice.upTo(80) } : {}),
    ...(dice.upTo(3) === 0 ? { transitionSeconds: dice.upTo(30) } : {}),
    ...(dice.upTo(2) === 0 && item.facing ? { facing: item.facing } : {}),
    springs: dice.upTo(2) === 0 ? item.springs : { firm: 1 + dice.upTo(3) },
    ...(lines.length > 0
      ? { script: lines.map(({ kind, text, from }) => ({ ...(item.script ?? [])[from ?? -1], kind, text })) }
      : {}),
  };
  return { item: edited, lines };
}

const withItem = (plan: Plan, item: MoveItem): Plan => ({
  ...plan,
  items: plan.items.map((one) => (one.id === item.id ? item : one)),
});
const movesOf = (plan: Pick<Plan, "items">) => plan.items.filter((item): item is MoveItem => item.kind === "move");

function shuffledBlock(dice: Dice, plan: Plan): { heading: string | null; after: Plan } {
  const headings = [null, ...plan.items.flatMap(({ id, kind }) => (kind === "heading" ? [id] : []))];
  const heading = dice.one(headings);
  const from = heading === null ? 0 : plan.items.findIndex(({ id }) => id === heading) + 1;
  const end = plan.items.findIndex(({ kind }, at) => at >= from && kind === "heading");
  const block = plan.items.slice(from, end < 0 ? undefined : end);
  for (let at = block.length - 1; at > 0; at--) block.splice(dice.upTo(at + 1), 0, ...block.splice(at, 1));
  const rest = end < 0 ? [] : plan.items.slice(end);
  return { heading, after: { ...plan, items: [...plan.items.slice(0, from), ...block, ...rest] } };
}

/** What somebody writes between the proposal and its answer. */
function meanwhile(dice: Dice, w: Writer): void {
  const items = readItems(w.doc);
  if (items.length === 0) return;
  const item = dice.one(items);
  const moves = movesOf({ items });
  const kind = dice.upTo(7);
  if (kind === 0) deleteItem(w, item.id, 1);
  else if (kind === 1) moveItem(w, item.id, dice.one([null, ...items.map(({ id }) => id)]));
  else if (moves.length === 0) return;
  else if (kind === 2) setItemField(w, dice.one(moves).id, "seconds", 5 + dice.upTo(50));
  else if (kind === 3) setSpring(w, dice.one(moves).id, "firm", dice.upTo(4));
  else writeInScript(dice, w, dice.one(moves).id);
}

/** Letters somewhere in a line; now and then a line is taken out instead. */
function writeInScript(dice: Dice, w: Writer, id: string): void {
  const script = scriptOf(w.doc, id);
  const lines = script?.length ?? 0;
  const isCut = lines > 1 && dice.upTo(6) === 0;
  if (isCut) w.doc.transact(() => script?.delete(dice.upTo(lines), 1), w.origin);
  else typeIn(dice, w, id, "xy ");
}

function typeIn(dice: Dice, w: Writer, id: string, letters: string): void {
  const texts = (scriptOf(w.doc, id)?.toArray() ?? []).flatMap((element) =>
    element instanceof Y.XmlElement ? element.toArray().filter((child) => child instanceof Y.XmlText) : [],
  );
  if (texts.length === 0) return;
  const text = dice.one(texts);
  w.doc.transact(() => text.insert(dice.upTo(text.length + 1), letters), w.origin);
}

/** A document with its page's undo. */
function page(start: Uint8Array, clientId: number) {
  const doc = new Y.Doc();
  doc.clientID = clientId;
  Y.applyUpdate(doc, start);
  const writer: Writer = { doc, origin: { page: clientId } };
  return { doc, writer, undo: planUndo(writer, () => undefined) };
}
const start = (plan: Plan): Uint8Array => Y.encodeStateAsUpdate(createPlanDoc(plan, { carry: true }));
const planIn = (doc: Y.Doc): Plan => readPlan(doc, STUDIO);
const subset = <T>(dice: Dice, list: readonly T[]): T[] => list.filter(() => dice.upTo(3) > 0);

/** A proposal for a document: of a plate, or of an order. */
function propose(dice: Dice, doc: Y.Doc): { itemId: string | null; parts: ProposalPart[]; after: Plan } {
  const plan = planIn(doc);
  const moves = movesOf(plan);
  if (moves.length === 0 || dice.upTo(4) === 0) {
    const { heading, after } = shuffledBlock(dice, plan);
    return { itemId: heading, parts: partsOf(plan, after, heading), after };
  }
  const item = dice.one(moves);
  const edited = editedCopy(dice, item);
  const after = withItem(plan, edited.item);
  const parts = partsOf(plan, after, item.id, { lines: edited.lines, ids: lineIdsOfItem(doc, item.id) });
  return { itemId: item.id, parts, after };
}

describe("a proposal", () => {
  it("turns the plan into what the lead made of it", () => {
    for (let seed = 1; seed <= often(150, 5000); seed++) {
      const dice = new Dice(seed);
      const one = page(start(randomPlan(dice)), 7);
      const { itemId, parts, after } = propose(dice, one.doc);
      expect(applied(planIn(one.doc), parts, lineIdsOf(one.doc, parts)), `seed ${seed}`).toEqual(after);
      if (parts.length > 0) expect(proposalPartsSchema.safeParse(parts).error, `seed ${seed}`).toBeUndefined();
      takeProposal(one.writer, { id: "p1", itemId, parts });
      expect(planIn(one.doc), `seed ${seed}`).toEqual(after);
      expect(takenProposals(one.doc).get("p1")?.parts ?? []).toEqual(parts.map(({ id }) => id));
    }
  });

  it("[INV-29] never damages a plan that was changed meanwhile, and is one step of undo", () => {
    let changed = 0;
    for (let seed = 1; seed <= often(150, 5000); seed++) {
      const dice = new Dice(seed);
      const one = page(start(randomPlan(dice)), 7);
      const { itemId, parts } = propose(dice, one.doc);
      const other: Writer = { doc: one.doc, origin: "somebody else" };
      for (let times = dice.upTo(5); times > 0; times--) meanwhile(dice, other);
      const chosen = subset(dice, parts);
      const before = planIn(one.doc);
      const ids = lineIdsOf(one.doc, chosen);
      const judged = fits(before, chosen, ids);
      changed += judged.filter(({ state }) => state === "changed").length;
      for (const { state, why } of judged) expect(why === null, `seed ${seed}`).toBe(state === "fits");
      const unfit = judged.flatMap(({ part, state }) => (state === "fits" ? [] : [part]));
      expect(applied(before, unfit, ids)).toBe(before);
      const wanted = applied(before, chosen, ids);
      expect(planSchema.safeParse(wanted).error, `seed ${seed}`).toBeUndefined();
      let taken: readonly string[] = [];
      one.undo.step(() => {
        taken = takeProposal(one.writer, { id: "p1", itemId, parts: chosen });
      });
      expect(planIn(one.doc), `seed ${seed}`).toEqual(wanted);
      expect(taken).toEqual(judged.filter(({ state }) => state === "fits").map(({ part }) => part.id));
      if (taken.length === 0) continue;
      const redoneBy = planIn(one.doc);
      expect(one.undo.undo().done).toBe(true);
      expect(planIn(one.doc), `seed ${seed}`).toEqual(before);
      expect(takenProposals(one.doc).size).toBe(0);
      expect(one.undo.canUndo).toBe(false);
      one.undo.redo();
      expect(planIn(one.doc), `seed ${seed}`).toEqual(redoneBy);
      expect(takenProposals(one.doc).get("p1")?.parts).toEqual(taken);
    }
    expect(changed, "many a ground has changed").toBeGreaterThan(often(15, 50));
  });

  it("can be taken twice without doing anything the second time", () => {
    for (let seed = 1; seed <= often(150, 5000); seed++) {
      const dice = new Dice(seed);
      const one = page(start(randomPlan(dice)), 7);
      const { itemId, parts } = propose(dice, one.doc);
      const other: Writer = { doc: one.doc, origin: "somebody else" };
      for (let times = dice.upTo(4); times > 0; times--) meanwhile(dice, other);
      takeProposal(one.writer, { id: "p1", itemId, parts });
      const once = planIn(one.doc);
      takeProposal(one.writer, { id: "p1", itemId, parts });
      expect(planIn(one.doc), `seed ${seed}`).toEqual(once);
    }
  });

  it("[INV-29] is taken while others write, in the same line too: all end with the same plan and no letter is lost", () => {
    let typed = 0;
    for (let seed = 1; seed <= often(120, 3000); seed++) {
      const dice = new Dice(seed);
      const begin = start(randomPlan(dice));
      const [one, two, three] = [page(begin, 7), page(begin, 8), page(begin, 9)];
      const { itemId, parts } = propose(dice, one.doc);
      const keepsLines = parts.filter(({ kind }) => kind !== "line-removed" && kind !== "line-moved");
      const letters: string[] = [];
      for (const [who, each] of [two, three].entries())
        for (let times = 1 + dice.upTo(4); times > 0; times--) {
          const letter = String.fromCharCode(0xe000 + letters.length + 100 * who);
          const before = Y.encodeStateVector(each.doc);
          typeIn(dice, each.writer, itemId ?? "", letter);
          if (!Buffer.from(before).equals(Buffer.from(Y.encodeStateVector(each.doc)))) letters.push(letter);
        }
      one.undo.step(() => takeProposal(one.writer, { id: "p1", itemId, parts: keepsLines }));
      const docs = [one.doc, two.doc, three.doc];
      for (const from of docs) for (const to of docs) if (from !== to) Y.applyUpdate(to, Y.encodeStateAsUpdate(from));
      const plan = planIn(one.doc);
      expect(planIn(two.doc)).toEqual(plan);
      expect(planIn(three.doc)).toEqual(plan);
      const said = JSON.stringify(plan.items);
      for (const letter of letters) expect(said, `seed ${seed}`).toContain(letter);
      typed += letters.length;
      one.undo.undo();
      const left = JSON.stringify(planIn(one.doc).items);
      for (const letter of letters) expect(left, `seed ${seed}, after undo`).toContain(letter);
    }
    expect(typed).toBeGreaterThan(100);
  });
});

describe("words of one line", () => {
  it("take both changes where they are of different words", () => {
    expect(mergedText("Press the carriage back.", "Press the carriage home.", "Slowly press the carriage back.")).toBe(
      "Slowly press the carriage home.",
    );
    expect(mergedText("One firm spring.", "One firm spring on.", "One firm spring, kneel.")).toBe(null);
    expect(mergedText("And go.", "And go!", "And go!")).toBe("And go!");
    expect(mergedText("Breathe out.", "Breathe in.", "Breathe slowly.")).toBe(null);
  });
});
