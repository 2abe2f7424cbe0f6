"use client";
/**
 * The class on its rail: two steel lines of time from which every item hangs. A listbox for keyboard and screen reader;
 * with a mouse or a finger its items can be pulled. `lib/rail` works out where everything stands.
 */
import {
  type CSSProperties,
  type KeyboardEvent,
  type ReactNode,
  useEffect,
  useLayoutEffect,
  useMemo,
  useRef,
} from "react";
import type { Command } from "#app/_parts/commands/command.ts";
import { commandOfKey, keyHandler } from "#app/_parts/commands/keys.ts";
import { type Needs, useNeeds } from "#app/_parts/use-needs.ts";
import type { ChangeMark } from "#app/_session/changes-shown.ts";
import { type PageActs, usePageActs } from "#app/_session/page-acts.tsx";
import { commandHolds, PLAN_COMMANDS } from "#app/_session/plan-commands.ts";
import type { PlanSession } from "#app/_session/session.ts";
import type { SessionSnapshot } from "#app/_session/session-types.ts";
import type { FirstDraft } from "#lib/draft/first-draft.ts";
import { type RailLayout, segmentOf } from "#lib/rail/layout.ts";
import { bringIntoView } from "./bring-into-view.ts";
import type { ItemMarks } from "./marks.ts";
import styles from "./rail.module.css";
import { RailGround } from "./rail-ground.tsx";
import { RailItems } from "./rail-items.tsx";
import { usePreviewLayout, useStillLayout } from "./rail-layout.ts";
import { namesAPlace, useFirstScreen } from "./use-first-screen.ts";
import { useFocusFollows } from "./use-focus-follows.ts";
import { useRailDrag } from "./use-rail-drag.ts";

interface RailProps {
  readonly session: PlanSession;
  readonly snap: SessionSnapshot;
  /** Pixels a second. */
  readonly scale: number;
  readonly marks: ReadonlyMap<string, ItemMarks>;
  /** What has changed since the text that is compared with. */
  readonly changes: ReadonlyMap<string, ChangeMark>;
  /** What is proposed for moves without words. */
  readonly draft: FirstDraft;
  /** The item whose plate is open, and what is in it. */
  readonly open: OpenOnRail | undefined;
}

interface OpenOnRail {
  readonly id: string;
  readonly plate: ReactNode;
}

export function Rail({ session, snap, scale, marks, changes, draft, open }: RailProps) {
  const { needs: words, measure } = useNeeds();
  const needs = useMemo(() => withOpenPlate(words, open?.id), [words, open?.id]);
  const sizes = { snap, scale, needs };
  const still = useStillLayout(sizes);
  const drag = useRailDrag(session, snap.plan, still, scale);
  const layout = usePreviewLayout(still, sizes, drag.preview);
  const drawn = useFirstScreen(layout, snap.selectedId !== null || namesAPlace());
  const list = useRef<HTMLDivElement>(null);
  const acts = usePageActs();
  useFocusFollows(list, snap.selectedId);
  useStillWhileOpening(layout, open?.id);
  return (
    <div className={styles.rail} style={{ height: layout.height }}>
      <RailGround snap={snap} layout={layout} drawn={drawn} measure={measure} preview={drag.preview} />
      <div
        ref={list}
        role="listbox"
        aria-label="The class, item by item"
        aria-describedby="rail-keys-hint"
        aria-busy={drawn.length < layout.segments.length || undefined}
        tabIndex={snap.plan.items.length === 0 ? 0 : -1}
        className={styles.list}
        onKeyDown={railKeys(acts)}
      >
        <RailItems {...{ session, snap, marks, changes, draft, drawn, drag, measure }} openId={open?.id} />
      </div>
      {open && (
        <Opened key={open.id} {...{ open, layout }} head={words[open.id] ?? 0} measure={measure(openKey(open.id))} />
      )}
      <p id="rail-keys-hint" className="visually-hidden">
        Arrow keys choose an item, Enter opens it, question mark lists all keys.
      </p>
    </div>
  );
}

/** A command about the chosen item is about the one with the focus, while none is chosen. */
function railKeys({ session, run, stand }: PageActs) {
  const onKey = keyHandler(PLAN_COMMANDS, "rail", { run, holds: commandHolds(session) });
  return (event: KeyboardEvent<HTMLElement>) => {
    const command = commandOfKey(PLAN_COMMANDS, "rail", event);
    const asked: Command | undefined = command && PLAN_COMMANDS.commands[command];
    const id = event.target instanceof HTMLElement ? event.target.dataset.item : undefined;
    if (asked?.needs?.includes("item") && session.getSnapshot().selectedId === null && id !== undefined) stand(id);
    onKey(event);
  };
}

const openKey = (id: string): string => `open:${id}`;

/** An open plate needs its own words and what is open under them. */
function withOpenPlate(words: Needs["needs"], id: string | undefined): Needs["needs"] {
  if (id === undefined) return words;
  return { ...words, [id]: (words[id] ?? 0) + (words[openKey(id)] ?? 0) };
}

interface OpenedProps {
  readonly open: OpenOnRail;
  readonly layout: RailLayout;
  /** Height of the plate's own words, px. */
  readonly head: number;
  readonly measure: (element: HTMLElement | null) => void;
}

/** What is open lies on its plate, after the list of plates: a list may hold nothing that can be written in. */
function Opened({ open, layout, head, measure }: OpenedProps) {
  const top = (segmentOf(layout, open.id)?.top ?? 0) + head;
  const box = useRef<HTMLDivElement>(null);
  // As much of it as the screen holds. By then it has its height.
  useEffect(() => {
    const frame = requestAnimationFrame(() => box.current && bringIntoView(box.current));
    return () => cancelAnimationFrame(frame);
  }, []);
  return (
    <div ref={box} className={styles.opened} style={{ top, "--head": `${head}px` } as CSSProperties}>
      <div ref={measure} className={styles.openedWords}>
        {open.plate}
      </div>
    </div>
  );
}

/** A plate that opens or closes stays where it was on the screen, whatever closes or opens above it. */
function useStillWhileOpening(layout: RailLayout, openId: string | undefined): void {
  const before = useRef({ layout, openId });
  useLayoutEffect(() => {
    const last = before.current;
    before.current = { layout, openId };
    const id = last.openId === openId ? undefined : (openId ?? last.openId);
    if (id === undefined) return;
    const by = (segmentOf(layout, id)?.top ?? 0) - (segmentOf(last.layout, id)?.top ?? 0);
    if (by !== 0) scrollBy({ top: by, behavior: "instant" });
  }, [layout, openId]);
}
