"use client";
/** The chosen item, whole: its move, side, time, springs, set-up, the change into it, what the library says, its script. */
import { type ReactNode, useState } from "react";
import { HoldFields } from "#app/_order/hold-fields.tsx";
import { ScriptEditor } from "#app/_script/script-editor.tsx";
import { clockTime, plural, sideWords } from "#lib/plan/format.ts";
import { moveOf, own } from "#lib/plan/lookup.ts";
import type { MoveItem, PlanItem } from "#lib/plan/schema.ts";
import { LoadPart } from "../../_load/load-part.tsx";
import { Choice } from "../../_parts/choice.tsx";
import { MovePicker } from "../../_parts/move-picker.tsx";
import styles from "../../_parts/panel.module.css";
import { addOtherSide, changeMove, duplicate, setField, sidesOf, takeOut } from "../../_session/acts.ts";
import { nameOf, tintOf } from "../../_session/item-words.ts";
import type { PlanSession } from "../../_session/session.ts";
import type { SessionSnapshot } from "../../_session/session-types.ts";
import { ItemLabel } from "./item-label.tsx";
import { MoveFacts } from "./move-facts.tsx";
import { SetupFields } from "./setup-fields.tsx";
import { SpringSteppers } from "./spring-steppers.tsx";
import { TimeFields } from "./time-fields.tsx";

interface ItemPanelProps {
  readonly session: PlanSession;
  readonly snap: SessionSnapshot;
  readonly item: PlanItem;
  readonly onAdd: () => void;
  /** Opens the block in fewer set-ups. */
  readonly onOrder: () => void;
  /** Findings and threads of the item, where there is no margin to show them. */
  readonly slips: ReactNode;
}

export function ItemPanel({ session, snap, item, onAdd, onOrder, slips }: ItemPanelProps) {
  const readOnly = !session.canWrite;
  return (
    <section className={styles.panel} aria-label={`Item: ${nameOf(snap.plan, item)}`}>
      <PanelHead snap={snap} item={item} />
      {!readOnly && <ItemActs {...{ session, item, onAdd, onOrder }} />}
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
  const parts = row
    ? [
        item.kind === "heading" ? `at ${clockTime(row.start)}` : `${clockTime(row.start)} to ${clockTime(row.end)}`,
        item.kind === "move" && item.side !== "both" && sideWords(item.side),
        row.reps !== null && plural(row.reps, "rep"),
      ]
    : [];
  return (
    <header className={styles.head} data-tint={item.kind === "move" ? tintOf(move) : undefined}>
      <h2>{nameOf(snap.plan, item)}</h2>
      <p className={styles.times}>{parts.filter(Boolean).join(" · ")}</p>
    </header>
  );
}

type ActsProps = Pick<ItemPanelProps, "session" | "item" | "onAdd" | "onOrder">;

function ItemActs({ session, item, onAdd, onOrder }: ActsProps) {
  const oneSided = item.kind === "move" && (item.side === "left" || item.side === "right");
  return (
    <div className="acts light">
      <button type="button" className="button" onClick={onAdd}>
        Add after this
      </button>
      {item.kind === "heading" && (
        <button type="button" className="button" onClick={onOrder}>
          Fewer set-ups
        </button>
      )}
      {oneSided && (
        <button type="button" className="button" onClick={() => addOtherSide(session, item)}>
          Add the other side
        </button>
      )}
      <button type="button" className="button" onClick={() => duplicate(session, item)}>
        Duplicate
      </button>
      <button type="button" className="button" onClick={() => takeOut(session, item)}>
        Take out
      </button>
    </div>
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
        <Choice
          label="Side"
          value={item.side}
          options={sides}
          disabled={readOnly}
          onChoose={(side) => setField(session, item.id, "side", side)}
        />
      )}
      <SpringSteppers session={session} item={item} equipment={snap.plan.equipment} disabled={readOnly} />
      <LoadPart {...{ session, snap, item, readOnly }} />
      {slips}
      <div className={styles.script}>
        <h3>Script</h3>
        <ScriptEditor session={session} itemId={item.id} readOnly={readOnly} />
      </div>
      <SetupFields {...{ session, snap, item, readOnly }} />
      <HoldFields {...{ session, item, readOnly }} plan={snap.plan} />
      {move && <MoveFacts move={move} page={own(session.studio.moves, item.move) ? `/library/${item.move}` : null} />}
    </>
  );
}

/** Another move in the same place. Opens by itself while no move is chosen. */
function MoveChange({ session, snap, item }: Omit<MoveBodyProps, "readOnly" | "slips">) {
  const known = moveOf(snap.plan, item) !== undefined;
  const [open, setOpen] = useState(!known);
  const take = (moveId: string) => {
    changeMove(session, item.id, moveId);
    setOpen(false);
  };
  return (
    <div className={styles.change}>
      <button type="button" className="text-button" aria-expanded={open} onClick={() => setOpen(!open)}>
        {open ? "Keep this move" : "Choose another move"}
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
