"use client";
/**
 * The class on its rail: two steel lines of time from which every item hangs. A listbox for keyboard and screen reader;
 * with a mouse or a finger its items can be pulled. `lib/rail` works out where everything stands.
 */
import { useEffect, useRef } from "react";
import { keyHandler } from "#app/_parts/commands/keys.ts";
import { useNeeds } from "#app/_parts/use-needs.ts";
import { usePageActs } from "#app/_session/page-acts.tsx";
import { commandHolds, PLAN_COMMANDS } from "#app/_session/plan-commands.ts";
import type { PlanSession } from "#app/_session/session.ts";
import type { SessionSnapshot } from "#app/_session/session-types.ts";
import type { RailLayout } from "#lib/rail/layout.ts";
import type { ItemMarks } from "./item-on-rail.tsx";
import styles from "./rail.module.css";
import { RailGround } from "./rail-ground.tsx";
import { RailItems } from "./rail-items.tsx";
import { usePreviewLayout, useStillLayout } from "./rail-layout.ts";
import { useFocusFollows } from "./use-focus-follows.ts";
import { useRailDrag } from "./use-rail-drag.ts";

interface RailProps {
  readonly session: PlanSession;
  readonly snap: SessionSnapshot;
  /** Pixels a second. */
  readonly scale: number;
  readonly marks: ReadonlyMap<string, ItemMarks>;
  /** Told where everything stands, so that the margin can stand at the same height. */
  readonly onLayout: (layout: RailLayout) => void;
}

export function Rail({ session, snap, scale, marks, onLayout }: RailProps) {
  const { needs, measure } = useNeeds();
  const sizes = { snap, scale, needs };
  const still = useStillLayout(sizes);
  const drag = useRailDrag(session, snap.plan, still, scale);
  const layout = usePreviewLayout(still, sizes, drag.preview);
  const list = useRef<HTMLDivElement>(null);
  const { run } = usePageActs();
  useFocusFollows(list, snap.selectedId);
  useEffect(() => onLayout(layout), [layout, onLayout]);
  return (
    <div className={styles.rail} style={{ height: layout.height }}>
      <RailGround snap={snap} layout={layout} measure={measure} preview={drag.preview} />
      <div
        ref={list}
        role="listbox"
        aria-label="The class, item by item"
        aria-describedby="rail-keys-hint"
        tabIndex={snap.plan.items.length === 0 ? 0 : -1}
        className={styles.list}
        onKeyDown={keyHandler(PLAN_COMMANDS, "rail", { run, holds: commandHolds(session) })}
      >
        <RailItems {...{ session, snap, marks, layout, drag, measure }} />
      </div>
      <p id="rail-keys-hint" className="visually-hidden">
        Arrow keys choose an item, Enter opens it, question mark lists all keys.
      </p>
    </div>
  );
}
