"use client";
import { useEffect, useMemo, useRef, useState } from "react";
/** The state of the month's page: what is chosen, what is on its way, and the month as it then is. */
import type { Formats } from "#lib/formats/formats.ts";
import { MonthAnalyst } from "#lib/month/check/analyst.ts";
import { own } from "#lib/plan/lookup.ts";
import { togetherKey } from "#lib/tide/finding-words.ts";
import { withSlots } from "#lib/tide/preview.ts";
import { monthActs } from "./month-acts.ts";
import type { MonthChoice, MonthDesk } from "./month-desk.ts";
import type { MonthSession } from "./month-session.ts";
import type { MonthPageProps } from "./month-types.ts";
import { placeInAddress, writeAddress } from "./place-in-address.ts";
import { useMonth } from "./use-month.ts";
import { useOpenFindings } from "./use-open-findings.ts";
import { useSinceSigned } from "./use-since-signed.ts";

export function useDesk(session: MonthSession, props: MonthPageProps): MonthDesk {
  const month = useMonth(session);
  const { formats } = props;
  const [choice, setChoice] = useState<MonthChoice>(() => firstChoice(props));
  const acts = useMemo(() => monthActs(session, formats), [session, formats]);
  const tried = useShown(month, choice);
  const { look: open, accepted } = useOpenFindings(month.look, month.accepted);
  const { look } = useOpenFindings(tried.look, month.accepted);
  const shown = useMemo(
    () => ({ file: tried.file, look: tried.look === month.look ? open : look }),
    [tried, look, month.look, open],
  );
  const since = useSinceSigned(month, props.month, formats);
  const slots = useMemo(() => new Map(month.look.slots.map(({ slot }) => [slot.id, slot])), [month.look]);
  const chosen = useChosen(shown, choice, formats);
  const settled = useSettled(month, choice);
  useSharedPlace(session, settled);
  usePlaceNamed(props.month, setChoice);
  return {
    ...{ session, month, props, acts, formats, shown, chosen, open, accepted, since },
    choice: settled,
    choose: (part) => setChoice((now) => withoutTrial({ ...now, ...part })),
    slot: (id) => slots.get(id),
  };
}

function firstChoice({ month }: MonthPageProps): MonthChoice {
  const place = placeInAddress(month);
  return {
    regulars: null,
    rooms: [],
    allGroups: false,
    allCoaches: false,
    finding: null,
    ...(place ?? { panel: null, at: { date: `${month}-01`, slot: null } }),
    moving: null,
    lit: null,
    onlyCoach: null,
    proposed: {},
  };
}

/** Plans are tried on the sheet only beside the fill that proposes them. */
const withoutTrial = (choice: MonthChoice): MonthChoice =>
  choice.panel?.kind === "fill" || Object.keys(choice.proposed).length === 0 ? choice : { ...choice, proposed: {} };

type Month = MonthDesk["month"];

/** What was never chosen, or is no longer there, is the first of its kind. */
function useSettled({ file, look, today }: Month, choice: MonthChoice): MonthChoice {
  const { regulars, at } = choice;
  const rooms = useMemo(() => roomsShown(file, choice.rooms), [file, choice.rooms]);
  return useMemo(() => {
    const ids = Object.keys(file.regulars);
    const { from, to } = file.dates;
    const never = at.slot === null && at.date === from && today >= from && today <= to;
    return {
      ...choice,
      regulars: regulars !== null && ids.includes(regulars) ? regulars : mostClasses(ids, look.sums),
      rooms,
      at: never && choice.panel === null ? { date: today, slot: null } : at,
    };
  }, [file, look, today, choice, regulars, rooms, at]);
}

/** Of the regulars those that come on most days. */
function mostClasses(ids: readonly string[], sums: Month["look"]["sums"]): string | null {
  const days = (id: string) => own(sums.regulars, id)?.days.length ?? 0;
  return ids.length === 0 ? null : ids.reduce((a, b) => (days(b) > days(a) ? b : a));
}

/** Those chosen; without a choice the rooms in which something takes place, in the studio's order; all of them while nothing does. */
function roomsShown(file: Month["file"], chosen: readonly string[]): readonly string[] {
  const known = chosen.filter((id) => own(file.rooms, id) !== undefined);
  if (known.length > 0) return known;
  const used = new Set([...file.slots, ...(file.pattern ?? [])].map(({ room }) => room));
  const all = Object.keys(file.rooms);
  const there = all.filter((id) => used.has(id));
  return there.length > 0 ? there : all;
}

/** A second analyst, so that what is only tried leaves the first one's answers as they are. */
function useShown({ file, look }: Month, { moving, proposed }: MonthChoice): MonthDesk["shown"] {
  const analyst = useRef<MonthAnalyst | null>(null);
  return useMemo(() => {
    const changed = new Map<string, (typeof look.slots)[number]["slot"]>();
    for (const { slot } of look.slots) {
      const plan = own(proposed, slot.id);
      if (plan !== undefined) changed.set(slot.id, { ...slot, plan });
      if (moving?.slot === slot.id)
        changed.set(slot.id, { ...(changed.get(slot.id) ?? slot), date: moving.date, start: moving.start });
    }
    if (changed.size === 0) return { file, look };
    analyst.current ??= new MonthAnalyst();
    const tried = withSlots(file, [...changed.values()]);
    return { file: tried, look: analyst.current.look(tried) };
  }, [file, look, moving, proposed]);
}

function useChosen(
  { file, look }: MonthDesk["shown"],
  { finding, regulars }: MonthChoice,
  formats: Formats,
): MonthDesk["chosen"] {
  return useMemo(() => {
    const slots = new Map(look.slots.map(({ slot }) => [slot.id, slot]));
    const place = { formats, month: file, regulars, slot: (id: string) => slots.get(id) };
    const first = look.findings.find(({ id }) => id === finding) ?? look.findings[0];
    if (!first) return [];
    const key = togetherKey(first, place);
    return look.findings.filter((other) => other.rule === first.rule && togetherKey(other, place) === key);
  }, [file, look, finding, regulars, formats]);
}

/** A link within the month to a class or a day of it, such as one that was found. */
function usePlaceNamed(month: string, setChoice: (next: (now: MonthChoice) => MonthChoice) => void): void {
  useEffect(() => {
    const go = () => {
      const place = placeInAddress(month);
      if (place) setChoice((now) => withoutTrial({ ...now, ...place }));
    };
    addEventListener("hashchange", go);
    return () => removeEventListener("hashchange", go);
  }, [month, setChoice]);
}

/** Others see which class is open here, and coming back to this address opens it again. */
function useSharedPlace(session: MonthSession, { panel, at }: MonthChoice): void {
  const open = panel?.kind === "class" ? panel.slot : null;
  useEffect(() => session.select(open ?? at.slot), [session, open, at.slot]);
  useEffect(() => writeAddress(open), [open]);
}
