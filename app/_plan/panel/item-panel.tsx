"use client";
/** Everything about the chosen item: move, side, time, springs, load, script, set-up, and what the library says of it. */
import { type ReactNode, useState } from "react";
import { HoldFields } from "#app/_order/hold-fields.tsx";
import { ScriptEditor } from "#app/_script/script-editor.tsx";
import { sideWords } from "#lib/plan/format.ts";
import { moveOf, own } from "#lib/plan/lookup.ts";
import type { MoveItem, PlanItem } from "#lib/plan/schema.ts";
import { lateItemLoad } from "../../_load/late-load.ts";
import { ChoiceField } from "../../_parts/choice.tsx";
import { LatePart } from "../../_parts/late-part.tsx";
import { MovePicker } from "../../_parts/move-picker.tsx";
import styles from "../../_parts/panel.module.css";
import { changeItemMove, setField, sidesOf } from "../../_session/acts.ts";
import { nameOf, tintOf } from "../../_session/item-words.ts";
import { PlanButton } from "../../_session/page-acts.tsx";
import { ITEM_ACTS } from "../../_session/plan-commands.ts";
import type { PlanSession } from "../../_session/session.ts";
import type { SessionSnapshot } from "../../_session/session-types.ts";
import { ItemLabel } from "./item-label.tsx";
import { ItemMoveFacts } from "./item-move-facts.tsx";
import { ITEM_WORDS, timesWords } from "./panel-words.ts";
import { SetupFields } from "./setup-fields.tsx";
import { SpringSteppers } from "./spring-steppers.tsx";
import { TimeFields } from "./time-fields.tsx";

interface ItemPanelProps {
  readonly session: PlanSession;
  readonly snap: SessionSnapshot;
  readonly item: PlanItem;
  /** Findings and threads of the item, where no margin shows them. */
  readonly slips: ReactNode;
}

export function ItemPanel({ session, snap, item, slips }: ItemPanelProps) {
  const readOnly = !session.canWrite;
  return (
    <section className={styles.panel} aria-label={`Item: ${nameOf(snap.plan, item)}`}>
      <PanelHead snap={snap} item={item} />
      <div className="acts light">
        {ITEM_ACTS.map((command) => (
          <PlanButton key={command} command={command} />
        ))}
      </div>
      {item.kind === "move" ? (
        <MoveBody session={session} snap={snap} item={item} readOnly={readOnly} slips={slips} />
      ) : (
        <>
          <ItemLabel session={session} item={item} readOnly={readOnly} />
          {item.kind === "pause" && <TimeFields {...{ session, snap, item, readOnly }} />}
          {slips}
        </>
      )}
    </section>
  );
}

function PanelHead({ snap, item }: { snap: SessionSnapshot; item: PlanItem }) {
  const row = snap.rows.find((r) => r.item === item.id);
  const move = item.kind === "move" ? moveOf(snap.plan, item) : undefined;
  return (
    <header className={styles.head} data-tint={item.kind === "move" ? tintOf(move) : undefined}>
      <h2>{nameOf(snap.plan, item)}</h2>
      <p className={styles.times}>{row && timesWords(item, row)}</p>
    </header>
  );
}

interface MoveBodyProps {
  readonly session: PlanSession;
  readonly snap: SessionSnapshot;
  readonly item: MoveItem;
  readonly readOnly: boolean;
  readonly slips: ReactNode;
}

function MoveBody({ session, snap, item, readOnly, slips }: MoveBodyProps) {
  const move = moveOf(snap.plan, item);
  const sides = withCurrent(sidesOf(move), item.side).map((side) => ({ value: side, label: sideWords(side) }));
  return (
    <>
      {!readOnly && <MoveChange key={item.id} {...{ session, snap, item }} />}
      <TimeFields {...{ session, snap, item, readOnly }} />
      {sides.length > 1 && (
        <ChoiceField
          label={ITEM_WORDS.side}
          value={item.side}
          options={sides}
          disabled={readOnly}
          onChoose={(side) => setField(session, item.id, "side", side)}
        />
      )}
      <SpringSteppers session={session} item={item} equipment={snap.plan.equipment} disabled={readOnly} />
      <LatePart part={lateItemLoad} props={{ session, snap, item, readOnly }} meanwhile={null} />
      {slips}
      <div className={styles.script}>
        <h3>{ITEM_WORDS.script}</h3>
        <ScriptEditor session={session} itemId={item.id} readOnly={readOnly} />
      </div>
      <SetupFields {...{ session, snap, item, readOnly }} />
      <HoldFields {...{ session, item, readOnly }} plan={snap.plan} />
      {move && (
        <ItemMoveFacts move={move} page={own(session.studio.moves, item.move) ? `/library/${item.move}` : null} />
      )}
    </>
  );
}

/** Puts another move in its place. Open from the start while the move is not known. */
function MoveChange({ session, snap, item }: Omit<MoveBodyProps, "readOnly" | "slips">) {
  const known = moveOf(snap.plan, item) !== undefined;
  const [open, setOpen] = useState(!known);
  const take = (moveId: string) => {
    changeItemMove(session, item.id, moveId);
    setOpen(false);
  };
  return (
    <div className={styles.change}>
      <button type="button" className="text-button" aria-expanded={open} onClick={() => setOpen(!open)}>
        {open ? ITEM_WORDS.keepMove : ITEM_WORDS.otherMove}
      </button>
      {open && (
        <MovePicker
          moves={{ ...session.studio.moves, ...snap.plan.moves }}
          archived={session.studio.archived?.filter((id) => id !== item.move)}
          chosen={item.move}
          onTake={take}
          autoFocus
        />
      )}
    </div>
  );
}

const withCurrent = <T,>(list: readonly T[], current: T): readonly T[] =>
  list.includes(current) ? list : [current, ...list];
