"use client";
/** Beside the plan: the chosen item, or the class as a whole. On a narrow screen a sheet over it. */
import type { KeyboardEvent, Ref } from "react";
import { useFirstDraft } from "#app/_draft/use-first-draft.ts";
import { Alike } from "#app/_margin/alike.tsx";
import { Margin } from "#app/_margin/margin.tsx";
import { keyHandler } from "#app/_parts/commands/keys.ts";
import { UndoButton } from "#app/_parts/commands/undo-buttons.tsx";
import { type PageActs, PlanButton, usePageActs } from "#app/_session/page-acts.tsx";
import { PLAN_COMMANDS } from "#app/_session/plan-commands.ts";
import { saveWords } from "#lib/client/doc-session/save-state.ts";
import { clockTime } from "#lib/plan/format.ts";
import { itemById } from "#lib/plan/lookup.ts";
import type { PlanItem } from "#lib/plan/schema.ts";
import styles from "../../_parts/panel.module.css";
import type { PlanSession } from "../../_session/session.ts";
import type { SessionSnapshot } from "../../_session/session-types.ts";
import { ClassPanel } from "./class-panel.tsx";
import { ItemPanel } from "./item-panel.tsx";

interface PanelProps {
  readonly ref: Ref<HTMLElement>;
  readonly session: PlanSession;
  readonly snap: SessionSnapshot;
  /** What it stands beside, or lies over. */
  readonly beside: "rail" | "lanes" | "read-through";
  /** Over the plan, on a narrow screen. */
  readonly asSheet: boolean;
}

export function Panel({ ref, session, snap, beside, asSheet }: PanelProps) {
  const { run } = usePageActs();
  const item = snap.selectedId === null ? undefined : itemById(snap.plan, snap.selectedId);
  const onKeyDown = panelKeys(run);
  return (
    <aside
      ref={ref}
      tabIndex={-1}
      className={asSheet ? styles.sheet : styles.aside}
      aria-label={item ? "The chosen item" : "The class"}
      onKeyDownCapture={scriptKeys(run)}
      onKeyDown={onKeyDown}
    >
      {asSheet && <SheetBar session={session} snap={snap} beside={beside} />}
      {!asSheet && <PlanButton command={item ? "choose-nothing" : "leave-panel"} className={styles.shut ?? ""} />}
      {item ? (
        <ItemPanel {...{ session, snap, item }} />
      ) : (
        <ClassPanel session={session} snap={snap} slips={<ClassSlips session={session} snap={snap} />} />
      )}
    </aside>
  );
}

/** What was found and said about the class as a whole, and what one rule found on several plates. */
function ClassSlips({ session, snap }: Pick<PanelProps, "session" | "snap">) {
  const draft = useFirstDraft(session, snap);
  return (
    <>
      <Margin session={session} about={null} />
      <Alike session={session} inDraft={draft} />
    </>
  );
}

/** A field may need Escape for itself, and a dialog that the panel opened closes with it. */
const panelKeys = (run: PageActs["run"]) => (event: KeyboardEvent) => {
  const isTaken =
    event.defaultPrevented || (event.target instanceof Element && event.target.closest("dialog") !== null);
  if (!isTaken) keyHandler(PLAN_COMMANDS, "panel", { run })(event);
};

/**
 * The editor keeps every Escape for itself, though it has a use for one only while its list of live fields is open. Looked at
 * before it is.
 */
const scriptKeys = (run: PageActs["run"]) => (event: KeyboardEvent) => {
  const { target } = event;
  if (event.nativeEvent.isComposing || !(target instanceof HTMLElement)) return;
  if (!target.isContentEditable || target.hasAttribute("aria-activedescendant")) return;
  keyHandler(PLAN_COMMANDS, "panel", { run })(event);
};

interface OpenPlateProps extends Pick<PanelProps, "ref" | "session" | "snap"> {
  readonly item: PlanItem;
}

/** The same inside the plate of the item, on the rail. */
export function OpenPlate({ ref, session, snap, item }: OpenPlateProps) {
  const { run } = usePageActs();
  return (
    <aside
      ref={ref}
      tabIndex={-1}
      aria-label="The chosen item"
      onKeyDownCapture={scriptKeys(run)}
      onKeyDown={panelKeys(run)}
    >
      <ItemPanel {...{ session, snap, item }} inPlate />
    </aside>
  );
}

/** Over the sheet: the way back, undo, and what is saved. */
function SheetBar({ session, snap, beside }: Pick<PanelProps, "session" | "snap" | "beside">) {
  const { run } = usePageActs();
  return (
    <div className={styles.sheetBar}>
      <button type="button" className="button" data-first onClick={run["leave-panel"]}>
        Back to the {beside}
      </button>
      {session.canWrite && <UndoButton session={session} can={snap} />}
      <p className={styles.sheetClock} data-over={snap.total > snap.plan.lengthSeconds || undefined}>
        <b>{clockTime(snap.total)}</b> of {clockTime(snap.plan.lengthSeconds)}
        <br />
        {saveWords(snap)}
      </p>
    </div>
  );
}
