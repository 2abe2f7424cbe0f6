/**
 * How long the check takes that a page makes after each key: the changed document read, everything worked out from it, all
 * findings. A class of 60 items and 400 lines; 2,000 edits of each kind, spread over all lines and items. Wall time with
 * the collection of garbage in it, since that is what a page feels; beside it the processor's own time, which does not
 * depend on what else the machine does. Then what each step and each rule takes. Exit 1 when a target is missed.
 */
import * as Y from "yjs";
import { deriver } from "#app/_session/derive.ts";
import { analyse } from "#lib/analysis/check-plan.ts";
import { createPlanDoc } from "#lib/doc/create.ts";
import type { StudioContext } from "#lib/doc/from-studio.ts";
import { orderedIds, scriptOf } from "#lib/doc/read.ts";
import { moveItem, setItemField, type Writer } from "#lib/doc/write.ts";
import type { Plan } from "#lib/plan/schema.ts";
import { RULES } from "#lib/rules/registry.ts";
import { WHOLE_BODY } from "#seed/plans/whole-body.ts";
import { Dice } from "#tests/support/dice.ts";
import { longClass } from "#tests/support/long-class.ts";
import { Shares } from "./check-shares.ts";
import { quantile } from "./timing.ts";

const ITEMS = 60;
const LINES = 400;
const EDITS = 2000;
const WARM_UP = 500;
const LETTER_P99_MS = 2;
let allMet = true;

const moveIds = (doc: Y.Doc): string[] => orderedIds(doc).filter((id) => scriptOf(doc, id));

/** All texts of all scripts. */
function textsOf(doc: Y.Doc): Y.XmlText[] {
  const lines = moveIds(doc).flatMap((id) => scriptOf(doc, id)?.toArray() ?? []);
  return lines
    .flatMap((line) => (line instanceof Y.XmlElement ? line.toArray() : []))
    .filter((t) => t instanceof Y.XmlText);
}

type Edit = (w: Writer, dice: Dice) => void;

/** One key: a letter, then its removal, so that lines keep their length. */
function letters(doc: Y.Doc): Edit {
  const texts = textsOf(doc);
  let typed: { text: Y.XmlText; at: number } | undefined;
  return (_, dice) => {
    const last = typed;
    if (last) last.text.delete(last.at, 1);
    const text = dice.one(texts);
    typed = last ? undefined : { text, at: dice.upTo(text.length + 1) };
    typed?.text.insert(typed.at, dice.one([..."aeiou bdfgklmnprstvz"]));
  };
}

const changedTime: Edit = (w, dice) => {
  const id = dice.one(moveIds(w.doc));
  setItemField(w, id, "seconds", 30 + 5 * dice.upTo(13));
};

const movedItem: Edit = (w, dice) => {
  const ids = orderedIds(w.doc);
  const id = dice.one(ids);
  moveItem(w, id, dice.one([null, ...ids.filter((other) => other !== id)]));
};

const KINDS = [
  { what: "one letter in a line", make: letters },
  { what: "one time changed", make: () => changedTime },
  { what: "one item moved", make: () => movedItem },
] as const;

/** A document of the long class, and its studio. */
function opened(): { readonly doc: Y.Doc; readonly studio: StudioContext } {
  const plan = longClass(ITEMS, LINES);
  const { moves, equipment, standards = {} } = plan;
  return { doc: createPlanDoc(plan, { carry: false }), studio: { moves, equipment, standards } };
}

/** Milliseconds: wall time, and processor time of the process, garbage collection and compiling included. */
interface Took {
  readonly wall: number;
  readonly used: number;
}

function took(act: () => unknown): Took {
  const [usedFrom, from] = [process.cpuUsage(), performance.now()];
  act();
  const wall = performance.now() - from;
  const { user, system } = process.cpuUsage(usedFrom);
  return { wall, used: (user + system) / 1000 };
}

interface Rounds {
  readonly before: () => void;
  readonly rounds: number;
}

/** Returns the 99th percentile of wall time. */
function show(what: string, act: () => unknown, { before, rounds }: Rounds): number {
  const once = () => {
    before();
    return took(act);
  };
  for (let i = 0; i < Math.min(WARM_UP, rounds); i++) once();
  const all = Array.from({ length: rounds }, once);
  const [wall, used] = (["wall", "used"] as const).map((of) => Float64Array.from(all, (one) => one[of]).sort());
  const at = (sorted = new Float64Array(), q = 0.5): string => quantile(sorted, q).toFixed(2);
  console.log(
    `  ${what}: p50 ${at(wall)} ms, p99 ${at(wall, 0.99)} ms, max ${at(wall, 1)} ms; of the processors p50 ${at(used)} ms, p99 ${at(used, 0.99)} ms`,
  );
  return quantile(wall ?? new Float64Array(), 0.99);
}

function edited(): void {
  console.log(`check of ${ITEMS} items and ${LINES} lines after each of ${EDITS} edits`);
  for (const { what, make } of KINDS) {
    const { doc, studio } = opened();
    const [derive, dice, edit] = [deriver(() => RULES), new Dice(11), make(doc)];
    const p99 = show(what, () => derive(doc, studio), {
      before: () => edit({ doc, origin: "bench" }, dice),
      rounds: EDITS,
    });
    if (make !== letters) continue;
    const met = p99 <= LETTER_P99_MS;
    allMet &&= met;
    console.log(
      `  target: p99 ms after one letter at most ${LETTER_P99_MS}; ${p99.toFixed(2)}. ${met ? "met" : "missed"}.`,
    );
  }
}

/** A whole analysis; each part is worked out when it is asked for. */
function allOf(plan: Plan): unknown {
  const { clock, balance, talk, classTalk, track, findings } = analyse(plan);
  return { clock, balance, talk, classTalk, track, findings };
}

function fresh(): void {
  console.log("check of a plan that nobody has looked at before");
  const plans = [
    { what: `${WHOLE_BODY.items.length} items`, of: WHOLE_BODY },
    { what: `${ITEMS} items and ${LINES} lines`, of: longClass(ITEMS, LINES) },
  ];
  for (const { what, of } of plans) {
    let plan = of;
    const before = () => {
      plan = structuredClone(of);
    };
    show(what, () => allOf(plan), { before, rounds: EDITS / 10 });
  }
}

function shares(): void {
  for (const { what, make } of KINDS) {
    const { doc, studio } = opened();
    const [parts, dice, edit] = [new Shares(doc, studio), new Dice(11), make(doc)];
    for (let i = 0; i < WARM_UP + EDITS; i++) {
      edit({ doc, origin: "bench" }, dice);
      if (i === WARM_UP) parts.forget();
      parts.check();
    }
    console.log(`where the time goes: ${what}, mean ms a check`);
    parts.show(EDITS);
  }
}

edited();
fresh();
shares();
process.exit(allMet ? 0 : 1);
