"use client";
/**
 * Compares the plan with the point that this person chose, or with the one that matters most to them, for as long as the page is
 * open; what it finds is drawn elsewhere (`session.changes`).
 */
import { useCallback, useDeferredValue, useEffect, useMemo, useRef, useState } from "react";
import type { ChangeMark, ChangesNow } from "#app/_session/changes-shown.ts";
import type { PlanSession } from "#app/_session/session.ts";
import { useSnapshot } from "#app/_session/use-session.ts";
import { contentHash } from "#lib/canonical/canonical.ts";
import { sameData } from "#lib/plan/same-data.ts";
import type { Plan, PlanItem } from "#lib/plan/schema.ts";
import { type ChangedPlate, changedPlates } from "#lib/plan-diff/changed-plates.ts";
import type { RoundsView } from "#lib/rounds/rounds.ts";
import { sendPlatesRead } from "./fetch-rounds.ts";
import { usePoint, useRounds } from "./use-rounds.ts";

const NO_PLATES: readonly ChangedPlate[] = [];

export function Comparing({ session }: { readonly session: PlanSession }) {
  const snap = useSnapshot(session);
  const { rounds } = useRounds(session, snap.state);
  const [chosen, choose] = useState<string | null | undefined>(undefined);
  const point = chosen === undefined ? (rounds?.usual ?? null) : chosen;
  const then = usePoint(session, point, point === "reading" ? String(snap.state.round?.number) : "");
  const before = then && "plan" in then ? then.plan : null;
  const plan = useDeferredValue(snap.plan);
  const plates = useMemo(
    () => (before ? changedPlates(before, plan, session.formats) : NO_PLATES),
    [before, plan, session],
  );
  const leads = session.me.roles.includes("lead");
  const { read, setRead } = usePlatesRead(session, rounds);
  const marks = useMarks(plates, plan, leads ? read : null);
  useEffect(() => {
    const there = plates.filter(({ what }) => what !== "gone");
    const now: ChangesNow = {
      ...{ marks, rounds, point, before, choose, setRead: leads ? setRead : null },
      plates: new Map(plates.map((plate) => [plate.id, plate])),
      order: there.map(({ id }) => id),
    };
    session.changes.show(now);
  }, [session, plates, marks, rounds, point, before, leads, setRead]);
  return null;
}

type Hashes = Readonly<Record<string, string>>;

/** What this lead has read: at once on the page, and kept by the server. */
function usePlatesRead(session: PlanSession, rounds: RoundsView | null) {
  const [own, setOwn] = useState<Hashes | null>(null);
  const read = own ?? rounds?.platesRead ?? NO_HASHES;
  const now = useRef(read);
  now.current = read;
  const setRead = useCallback(
    (itemId: string, on: boolean) => {
      const item = session.getSnapshot().plan.items.find(({ id }) => id === itemId);
      if (!item) return;
      const hash = hashOf(item);
      const { [itemId]: _before, ...rest } = now.current;
      setOwn(on ? { ...rest, [itemId]: hash } : rest);
      void sendPlatesRead(session.planId, { on, plates: [{ itemId, hash }] }).then((sent) => {
        if (sent.ok) return;
        setOwn(null);
        session.say(sent.message);
      });
    },
    [session],
  );
  return { read, setRead };
}
const NO_HASHES: Hashes = {};

/** Items never change in place, so each is hashed once. */
const hashes = new WeakMap<PlanItem, string>();
function hashOf(item: PlanItem): string {
  const known = hashes.get(item);
  if (known !== undefined) return known;
  const hash = contentHash(item);
  hashes.set(item, hash);
  return hash;
}

/** A mark that says the same stays the same object, so that its plate is not drawn again. */
function useMarks(plates: readonly ChangedPlate[], plan: Plan, read: Hashes | null): ReadonlyMap<string, ChangeMark> {
  const kept = useRef<ReadonlyMap<string, ChangeMark>>(new Map());
  return useMemo(() => {
    const marks = [...marksOfPlates(plates, plan, read)].map(([id, mark]) => {
      const before = kept.current.get(id);
      return [id, before && sameData(before, mark) ? before : mark] as const;
    });
    kept.current = new Map(marks);
    return kept.current;
  }, [plates, plan, read]);
}

function marksOfPlates(plates: readonly ChangedPlate[], plan: Plan, read: Hashes | null): Map<string, ChangeMark> {
  const changed = new Map(plates.map((plate) => [plate.id, plate]));
  const { above, below } = goneBeside(plates);
  const lastId = plan.items.at(-1)?.id;
  return new Map(
    plan.items.flatMap((item) => {
      const what = changed.get(item.id)?.what;
      const goneAbove = above.get(item.id) ?? [];
      const goneBelow = item.id === lastId ? below : [];
      if (!what && goneAbove.length + goneBelow.length === 0) return [];
      const word = what && what !== "gone" ? what : null;
      const isRead = word === null || read === null ? null : read[item.id] === hashOf(item);
      return [[item.id, { word, read: isRead, goneAbove, goneBelow }] as const];
    }),
  );
}

/** Names of removed plates, by the item that followed them; `below`: of those that nothing followed. */
function goneBeside(plates: readonly ChangedPlate[]) {
  const above = new Map<string, string[]>();
  const below: string[] = [];
  for (const { what, name, followedBy } of plates) {
    if (what !== "gone") continue;
    if (followedBy === null) below.push(name);
    else above.set(followedBy, [...(above.get(followedBy) ?? []), name]);
  }
  return { above, below };
}
