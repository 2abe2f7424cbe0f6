/** What a person does to a month, each one step of undo, with the sentence that says what was done. */

import type { Writer } from "#lib/doc/write.ts";
import { dayAndTime, dayWords } from "#lib/formats/dates.ts";
import type { Formats } from "#lib/formats/formats.ts";
import { MOST_SLOTS } from "#lib/month/file/cross-check.ts";
import type { MonthFile, MonthSlot, PatternLine } from "#lib/month/types.ts";
import { plural } from "#lib/plan/format.ts";
import { own } from "#lib/plan/lookup.ts";
import { planTitle } from "#lib/plan/plan-title.ts";
import type { Slot } from "#lib/programme/layout.ts";
import type { MonthState } from "#lib/programme/month-reader.ts";
import { roomLeft, tooManyWithLine, tooManyWords } from "#lib/programme/room-left.ts";
import { addSlot, changeSlot, putBackSlot, type SlotChange, takeOutSlot } from "#lib/programme/write.ts";
import { applyFill, type Copied, copyWeek, takeLastMonth } from "#lib/programme/write-many.ts";
import { addLine, changeRule, type LineRuleChange, withRule } from "#lib/programme/write-pattern.ts";
import { classTitle } from "#lib/tide/day-marks.ts";
import type { Moving } from "#lib/tide/preview.ts";
import { newId } from "../_parts/new-id.ts";
import { copiedWords } from "./copy-words.ts";
import type { MonthSession } from "./month-session.ts";
import { slotName } from "./month-words.ts";

export interface MonthActs {
  /** Runs one act as one step of undo and says the sentence; false where nobody may write. */
  run(act: (w: Writer) => void, sentence?: string): boolean;
  /** These, and `bringBack`, say instead of acting why a month cannot hold so many classes; "" once it is done. */
  add(slot: MonthSlot): string;
  addLine(line: PatternLine): string;
  changeRule(line: PatternLine, rule: LineRuleChange): string;
  copyWeek(from: string, to: string): string;
  takeLastMonth(last: MonthFile, shiftThemes: number): string;
  change(slot: MonthSlot, change: SlotChange): void;
  move(to: Moving): void;
  takeOut(slot: MonthSlot): void;
  putBack(slot: MonthSlot): void;
  /** One that was taken out of the month for good, and takes up room again. */
  bringBack(slot: Slot): string;
  putPlan(slot: MonthSlot, plan: string | null): void;
  fill(plans: Readonly<Record<string, string | null>>): void;
  /** The list of plans beside the month, for the keys 1 to 9; null when there is none. */
  listPlans(list: ListedPlans | null): void;
  putNthPlan(n: number): void;
}

interface ListedPlans {
  readonly slot: MonthSlot;
  readonly plans: readonly string[];
}

/** Long because: every act with its sentence, side by side. */
export function monthActs(session: MonthSession, f: Formats): MonthActs {
  const file = (): MonthFile => session.getSnapshot().file;
  const name = (slot: MonthSlot) => `${classTitle(file(), slot)} on ${dayWords(slot.date, f)}`;
  const run: MonthActs["run"] = (act, sentence) => {
    const did = session.act(act);
    if (did && sentence !== undefined) session.say(sentence);
    return did;
  };
  const copied = (copy: (w: Writer) => Copied) => {
    let did: Copied | undefined;
    run((w) => {
      did = copy(w);
    });
    if (!did) return "";
    const refused = did.over === undefined ? "" : tooManyWords(MOST_SLOTS + did.over);
    session.say(refused || copiedWords(did));
    return refused;
  };
  const unless = (refused: string | undefined, act: () => void): string => {
    if (refused === undefined) act();
    else session.say(refused);
    return refused ?? "";
  };
  const noRoom = () => (roomLeft(file()) > 0 ? undefined : tooManyWords(MOST_SLOTS + 1));
  let list: ListedPlans | null = null;
  const putPlan: MonthActs["putPlan"] = (slot, plan) =>
    run(
      (w) => changeSlot(w, slot.id, { plan }),
      plan === null ? `No plan in ${name(slot)}.` : `${titleOf(file(), plan)} in ${name(slot)}.`,
    );
  return {
    run,
    putPlan,
    add: (slot) => unless(noRoom(), () => run((w) => addSlot(w, slot, Date.now()), `Added: ${name(slot)}.`)),
    addLine: (line) =>
      unless(tooManyWithLine(file(), line), () =>
        run((w) => addLine(w, line, Date.now()), "Added a line to the pattern."),
      ),
    changeRule: (line, rule) =>
      unless(tooManyWithLine(file(), withRule(line, rule)), () => run((w) => changeRule(w, line.id, rule))),
    change: (slot, change) => run((w) => changeSlot(w, slot.id, change)),
    move: (to) => {
      const slot = session.getSnapshot().look.slots.find((one) => one.slot.id === to.slot)?.slot;
      if (!slot || (slot.date === to.date && slot.start === to.start)) return;
      run(
        (w) => changeSlot(w, to.slot, { date: to.date, start: to.start }),
        `Moved: ${classTitle(file(), slot)} to ${dayAndTime(to.date, to.start, f)}.`,
      );
    },
    takeOut: (slot) =>
      run(
        (w) => takeOutSlot(w, slot.id, { at: Date.now(), signedAt: session.getSnapshot().signed?.at ?? null }),
        `Taken out of the month: ${name(slot)}.`,
      ),
    putBack: (slot) => run((w) => putBackSlot(w, slot.id), `Put back: ${name(slot)}.`),
    bringBack: (slot) => unless(noRoom(), () => run((w) => putBackSlot(w, slot.id), `Put back: ${slotName(slot, f)}.`)),
    fill: (plans) =>
      run(
        (w) => applyFill(w, plans),
        `${plural(Object.values(plans).filter((plan) => plan !== null).length, "plan")} put in.`,
      ),
    copyWeek: (from, to) =>
      copied((w) => copyWeek(w, from, to, { newId, now: Date.now(), room: roomLeft(file()), weekStart: f.weekStart })),
    takeLastMonth: (last, shiftThemes) => {
      const before = asState(last, session.getSnapshot().state);
      const room = roomLeft(file());
      return copied((w) => takeLastMonth(w, before, { newId, now: Date.now(), shiftThemes, room }));
    },
    listPlans: (next) => {
      list = next;
    },
    putNthPlan: (n) => {
      const plan = list?.plans[n - 1];
      if (list && plan !== undefined) putPlan(list.slot, plan);
    },
  };
}

/** Another month's classes, as a document would hold them; the rest is of the month at hand. */
export const asState = ({ dates, holidays = {}, pattern = [], slots }: MonthFile, here: MonthState): MonthState => ({
  ...here,
  ...{ month: dates.from.slice(0, 7), dates, holidays, pattern },
  slots: slots.filter(({ date }) => date >= dates.from),
});

const titleOf = (file: MonthFile, plan: string): string => planTitle(own(file.plans, plan)?.title ?? "");
