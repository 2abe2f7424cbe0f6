"use client";
/** The month by hand: keys between days and classes, a class that is moved by key or dragged, and what a press does. */
import { type KeyboardEvent, useEffect, useRef, useState } from "react";
import { keyHandler } from "#app/_parts/commands/keys.ts";
import { dateOfDay, dayNumber } from "#lib/calendar/days.ts";
import { startLater } from "#lib/tide/preview.ts";
import { classesOn, daysOn, placeOfSlot, type TidePlace } from "#lib/tide/steps.ts";
import { findingAfter } from "./finding-corner.tsx";
import { type MovingCommand, SHEET_COMMANDS, type SheetCommand } from "./month-commands.ts";
import type { MonthDesk } from "./month-desk.ts";
import type { SheetHands } from "./sheet/sheet-types.ts";
import type { MeasuredSheet } from "./sheet/use-sheet.ts";
import { useDrag } from "./use-drag.ts";
import { useKeptFocus } from "./use-kept-focus.ts";
import { useKeysFromNowhere, waits } from "./use-keys-from-nowhere.ts";

/** The same object at every drawing, so that a day is drawn again only when something on it changed. */
export function useHands(desk: MonthDesk, measured: MeasuredSheet): SheetHands {
  const now = useHandsNow(desk, measured);
  const latest = useRef(now);
  latest.current = now;
  const [hands] = useState<SheetHands>(() => ({
    onOpen: (slot) => latest.current.onOpen(slot),
    onAdd: (date) => latest.current.onAdd(date),
    onFinding: (id) => latest.current.onFinding(id),
    onFocusSlot: (slot) => latest.current.onFocusSlot(slot),
    onKeyDown: (event) => latest.current.onKeyDown(event),
    onGrab: (event, slot) => latest.current.onGrab(event, slot),
    onPoint: (slot) => latest.current.onPoint(slot),
  }));
  useKeysFromNowhere(now.onKeyElsewhere);
  return hands;
}

interface HandsNow extends SheetHands {
  readonly onKeyElsewhere: (event: globalThis.KeyboardEvent) => void;
}

function useHandsNow(desk: MonthDesk, measured: MeasuredSheet): HandsNow {
  const { choice, choose } = desk;
  const drag = useDrag(desk, measured);
  const goTo = useFocus(desk, measured);
  const open = (slot: string) => {
    if (!drag.wasDragged())
      choose({ panel: { kind: "class", slot }, at: placeOfSlot(measured.sheet.days, slot) ?? choice.at });
  };
  return {
    onOpen: open,
    onAdd: (date) => choose({ panel: { kind: "new", date }, at: { date, slot: null } }),
    onFinding: (finding) => choose({ finding }),
    onFocusSlot: (slot) => {
      const at = placeOfSlot(measured.sheet.days, slot);
      const beside = choice.panel?.kind === "class" ? following(slot) : {};
      if (at && (at.slot !== choice.at.slot || at.date !== choice.at.date)) choose({ at, ...beside });
    },
    onKeyDown: (event) => onKey(event, desk, measured, goTo),
    onKeyElsewhere: (event) => onKeyElsewhere(event, desk, measured, goTo),
    onGrab: drag.grab,
    onPoint: (lit) => choose({ lit }),
  };
}

/** What is open beside the sheet follows the focus in it. */
const following = (slot: string) => ({ panel: { kind: "class", slot, follows: true } }) as const;

/** Puts the focus on a place, also when its class has gone to another row meanwhile. */
function useFocus(desk: MonthDesk, { body }: MeasuredSheet): (place: TidePlace) => void {
  const wanted = useRef<TidePlace | null>(null);
  const elementOf = ({ date, slot }: TidePlace) =>
    body.current?.querySelector<HTMLElement>(slot === null ? `[data-day="${date}"]` : `button[data-slot="${slot}"]`);
  // A class that went to another row is another element there; one that is gone leaves its day.
  useKeptFocus(body, ({ dataset: { slot = null, day } }) => {
    const date = day ?? desk.choice.at.date;
    return elementOf({ date, slot }) ?? elementOf({ date, slot: null });
  });
  useEffect(() => {
    const place = wanted.current;
    const found = place && elementOf(place);
    if (!found) return;
    wanted.current = null;
    if (document.activeElement !== found) found.focus();
  });
  return (place) => {
    wanted.current = place;
    const panel = desk.choice.panel;
    const beside = panel?.kind === "class" && place.slot !== null ? following(place.slot) : {};
    desk.choose({ at: place, ...beside });
  };
}

function onKey(
  event: KeyboardEvent<HTMLElement>,
  desk: MonthDesk,
  measured: MeasuredSheet,
  goTo: (place: TidePlace) => void,
): void {
  const { choice } = desk;
  if (choice.moving) {
    keyHandler(SHEET_COMMANDS, "moving", { run: movingCommands(desk, choice.moving, goTo) })(event);
    return;
  }
  const target = event.target instanceof HTMLElement ? event.target : null;
  const date = target?.closest<HTMLElement>("[data-date]")?.dataset.date;
  if (date === undefined) return;
  const slot = target?.closest<HTMLElement>("[data-slot]")?.dataset.slot ?? null;
  keyHandler(SHEET_COMMANDS, "sheet", { run: sheetCommands(desk, measured, { date, slot }, goTo) })(event);
}

/** At the place that Tab would reach. */
function onKeyElsewhere(
  event: globalThis.KeyboardEvent,
  desk: MonthDesk,
  measured: MeasuredSheet,
  goTo: (place: TidePlace) => void,
): void {
  const { at, moving, panel } = desk.choice;
  if (moving) {
    keyHandler(SHEET_COMMANDS, "moving", { run: movingCommands(desk, moving, goTo) })(event);
    return;
  }
  const seen = panel?.kind === "class" && panel.slot === at.slot;
  if (waits(event, seen)) return;
  keyHandler(SHEET_COMMANDS, "sheet", { run: sheetCommands(desk, measured, at, goTo) })(event);
}

function sheetCommands(
  desk: MonthDesk,
  { sheet: { days } }: MeasuredSheet,
  at: TidePlace,
  goTo: (place: TidePlace) => void,
): Readonly<Record<SheetCommand, () => void>> {
  const [first, last] = [days[0]?.date ?? at.date, days.at(-1)?.date ?? at.date];
  const plan = (n: number) => () => desk.acts.putNthPlan(n);
  return {
    "day-before": () => goTo(daysOn(days, at, -1)),
    "day-after": () => goTo(daysOn(days, at, 1)),
    "class-before": () => goTo(classesOn(days, at, -1)),
    "class-after": () => goTo(classesOn(days, at, 1)),
    "week-before": () => goTo(daysOn(days, at, -7)),
    "week-after": () => goTo(daysOn(days, at, 7)),
    "first-day": () => goTo({ date: first, slot: null }),
    "last-day": () => goTo({ date: last, slot: null }),
    ...sheetActs(desk, at),
    "next-finding": () => {
      const id = findingAfter(desk);
      const slots = desk.shown.look.findings.find((one) => one.id === id)?.slots ?? [];
      const place = placeOfSlot(days, slots.at(-1) ?? "");
      desk.choose({ finding: id });
      if (place) goTo(place);
    },
    ...{ "plan-1": plan(1), "plan-2": plan(2), "plan-3": plan(3), "plan-4": plan(4), "plan-5": plan(5) },
    ...{ "plan-6": plan(6), "plan-7": plan(7), "plan-8": plan(8), "plan-9": plan(9) },
  };
}

function sheetActs(desk: MonthDesk, at: TidePlace) {
  const { choose, choice, acts, month } = desk;
  const slot = at.slot === null ? undefined : desk.slot(at.slot);
  return {
    add: () => month.writes && choose({ panel: { kind: "new", date: at.date } }),
    move: () => slot && month.writes && choose({ moving: { slot: slot.id, date: slot.date, start: slot.start } }),
    "take-out": () => slot && (slot.out ? acts.putBack(slot) : acts.takeOut(slot)),
    "other-regulars": () =>
      choose({
        regulars: nextOf(
          Object.keys(month.file.regulars).map((id) => ({ id })),
          choice.regulars ?? "",
        ),
      }),
    close: () => choose({ panel: null, lit: null }),
  };
}

/** The id after that one, the first after the last. */
function nextOf(list: readonly { readonly id: string }[], id: string | undefined): string | null {
  const at = list.findIndex((one) => one.id === id);
  return list[(at + 1) % Math.max(1, list.length)]?.id ?? null;
}

function movingCommands(
  { choose, acts, month, slot: slotOf }: MonthDesk,
  moving: NonNullable<MonthDesk["choice"]["moving"]>,
  goTo: (place: TidePlace) => void,
): Readonly<Record<MovingCommand, () => void>> {
  const { from, to } = month.file.dates;
  const stay = (date: string) => {
    goTo({ date, slot: moving.slot });
    return date;
  };
  const later = (steps: number) => () => choose({ moving: { ...moving, start: startLater(moving.start, steps) } });
  const days = (by: number) => () => {
    const date = dateOfDay(dayNumber(moving.date) + by);
    if (date >= from && date <= to) choose({ moving: { ...moving, date: stay(date) } });
  };
  return {
    earlier: later(-1),
    later: later(1),
    "up-a-day": days(-1),
    "down-a-day": days(1),
    "put-there": () => {
      acts.move(moving);
      stay(moving.date);
      choose({ moving: null });
    },
    "give-up": () => {
      stay(slotOf(moving.slot)?.date ?? moving.date);
      choose({ moving: null });
    },
  };
}
