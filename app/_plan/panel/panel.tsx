"use client";
/** Beside the rail: the chosen item, or the class as a whole. On a phone a sheet over it. */
import type { Ref } from "react";
import { Margin } from "#app/_margin/margin.tsx";
import { saveWords } from "#lib/client/doc-session/save-state.ts";
import { clockTime } from "#lib/plan/format.ts";
import { itemById } from "#lib/plan/lookup.ts";
import styles from "../../_parts/panel.module.css";
import type { PlanSession } from "../../_session/session.ts";
import type { SessionSnapshot } from "../../_session/session-types.ts";
import { ClassPanel } from "./class-panel.tsx";
import { ItemPanel } from "./item-panel.tsx";

interface PanelProps {
  readonly ref: Ref<HTMLElement>;
  readonly session: PlanSession;
  readonly snap: SessionSnapshot;
  readonly onAdd: () => void;
  readonly onOrder: () => void;
  readonly onClose: () => void;
  /** What lies under the sheet: "rail". */
  readonly under: "rail" | "lanes" | "read-through";
  /** Where the panel is not always there: takes it away. */
  readonly onShut?: () => void;
  readonly sheet: boolean;
  /** There is a margin beside the rail: slips need no place here. */
  readonly wide: boolean;
}

export function Panel({ ref, session, snap, onAdd, onOrder, onClose, onShut, under, sheet, wide }: PanelProps) {
  const item = snap.selectedId === null ? undefined : itemById(snap.plan, snap.selectedId);
  if (!snap.ready) return null;
  return (
    <aside
      ref={ref}
      tabIndex={-1}
      className={sheet ? styles.sheet : styles.aside}
      aria-label={item ? "The chosen item" : "The class"}
      onKeyDown={(event) => event.key === "Escape" && !event.defaultPrevented && onClose()}
    >
      {sheet && (
        <div className={styles.sheetBar}>
          <button type="button" className="button" data-first onClick={onClose}>
            Back to the {under}
          </button>
          {session.canWrite && (
            <button type="button" className="button" disabled={!snap.canUndo} onClick={() => session.undo()}>
              Undo
            </button>
          )}
          <p className={styles.sheetClock} data-over={snap.total > snap.plan.lengthSeconds || undefined}>
            <b>{clockTime(snap.total)}</b> of {clockTime(snap.plan.lengthSeconds)}
            <br />
            {saveWords(snap)}
          </p>
        </div>
      )}
      {onShut && (
        <button type="button" className={`button ${styles.shut}`} onClick={onShut}>
          Close
        </button>
      )}
      {item ? (
        <ItemPanel
          {...{ session, snap, item, onAdd, onOrder }}
          slips={wide ? null : <Margin session={session} placements={null} itemId={item.id} />}
        />
      ) : (
        <>
          <ClassPanel session={session} snap={snap} />
          {!wide && <Margin session={session} placements={null} />}
        </>
      )}
    </aside>
  );
}
