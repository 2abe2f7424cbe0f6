"use client";
/** Slips in which this person is writing stay where they are, whatever becomes of what they are about. */
import { useMemo, useRef } from "react";
import { PLACE, type Typed } from "#app/_session/typed/typed-words.ts";
import type { ThreadView } from "#lib/protocol/messages.ts";
import type { Finding } from "#lib/rules/define/types.ts";

export const isTyping = (typed: readonly Typed[], { id }: Pick<ThreadView, "id">): boolean =>
  typed.some(({ place }) => place === PLACE.reply(id));

interface Held {
  /** The findings, with those that are gone but written about. */
  readonly findings: readonly Finding[];
  readonly gone: ReadonlySet<Finding>;
}

const NONE_GONE: ReadonlySet<Finding> = new Set();

export function useHeldFindings(findings: readonly Finding[], typed: readonly Typed[]): Held {
  const before = useRef<readonly Finding[]>([]);
  return useMemo(() => {
    const held = withHeld(before.current, findings, typed);
    before.current = held.findings;
    return held;
  }, [findings, typed]);
}

/** One that is gone stays after the finding that was before it, so that no slip moves and takes the keyboard with it. */
export function withHeld(before: readonly Finding[], findings: readonly Finding[], typed: readonly Typed[]): Held {
  const keys = new Set(findings.map(({ key }) => key));
  const gone = new Map(
    typed.flatMap(({ finding }) => (finding?.key && !keys.has(finding.key) ? [[finding.key, finding] as const] : [])),
  );
  if (gone.size === 0) return { findings, gone: NONE_GONE };
  const all = [...findings];
  for (const finding of gone.values()) {
    const was = before.findIndex(({ key }) => key === finding.key);
    const above = was < 0 ? undefined : before.slice(0, was).findLast(({ key }) => all.some((one) => one.key === key));
    const at = was < 0 ? all.length : all.findIndex((one) => above !== undefined && one.key === above.key) + 1;
    all.splice(at, 0, finding);
  }
  return { findings: all, gone: new Set(gone.values()) };
}
