"use client";
/**
 * The lanes of a plan. A lane in which nothing changed stays the same object. While somebody types, the letters are drawn
 * first and the lanes after them.
 */
import { useDeferredValue, useMemo, useRef } from "react";
import { nameOf } from "#app/_session/item-words.ts";
import type { SessionSnapshot } from "#app/_session/session-types.ts";
import { classLanes, keepSameLanes } from "#lib/lanes/class-lanes.ts";
import type { ClassLanes } from "#lib/lanes/types.ts";
import { talkShare } from "#lib/talk/talk.ts";

export function useLanes(now: SessionSnapshot): ClassLanes {
  const snap = useDeferredValue(now);
  const { plan, rows, total, balance, talk, track, findings, threads } = snap;
  const present = useSame(snap.places.flatMap(({ name, itemId }) => (itemId === null ? [] : [{ name, itemId }])));
  const talkShares = useMemo(() => Object.fromEntries([...talk].map(([id, one]) => [id, talkShare(one)])), [talk]);
  const before = useRef<ClassLanes | null>(null);
  return useMemo(() => {
    const input = { plan, rows, total, balance, talkShares, findings, threads, track, present };
    const next = classLanes({ ...input, nameOf: (item) => nameOf(plan, item) });
    before.current = keepSameLanes(next, before.current);
    return before.current;
  }, [plan, rows, total, balance, talkShares, findings, threads, track, present]);
}

/** The same object for as long as the value stays the same. */
function useSame<T>(value: T): T {
  const held = useRef(value);
  if (JSON.stringify(held.current) !== JSON.stringify(value)) held.current = value;
  return held.current;
}
