"use client";
/** Where the set-up of the item differs from the library, and the time to change into it. */
import { LengthField } from "#app/_parts/length-field.tsx";
import { worksSprings } from "#lib/load/load.ts";
import { moveOf } from "#lib/plan/lookup.ts";
import { FACINGS, type MoveItem } from "#lib/plan/schema.ts";
import { SelectField } from "../../_parts/choice.tsx";
import { NumberField } from "../../_parts/number-field.tsx";
import styles from "../../_parts/panel.module.css";
import { setField } from "../../_session/acts.ts";
import { FACING_WORDS } from "../../_session/item-words.ts";
import type { PlanSession } from "../../_session/session.ts";
import type { SessionSnapshot } from "../../_session/session-types.ts";
import { changeHint, ITEM_WORDS } from "./panel-words.ts";
import { TimeBounds } from "./time-fields.tsx";

interface SetupFieldsProps {
  readonly session: PlanSession;
  readonly snap: SessionSnapshot;
  readonly item: MoveItem;
  readonly readOnly: boolean;
}

export function SetupFields({ session, snap, item, readOnly }: SetupFieldsProps) {
  const usual = moveOf(snap.plan, item)?.facing;
  const own = { value: "usual" as const, label: usual ? `as the move: ${FACING_WORDS[usual]}` : "as the move" };
  const facings = [own, ...FACINGS.map((value) => ({ value, label: FACING_WORDS[value] }))];
  return (
    <div className={styles.setup}>
      <h3>{ITEM_WORDS.setUp}</h3>
      <Transition {...{ session, snap, item, readOnly }} />
      <div className={styles.pairOfFields}>
        <SelectField
          label={ITEM_WORDS.facing}
          value={item.facing ?? "usual"}
          options={facings}
          disabled={readOnly}
          onChoose={(facing) => setField(session, item.id, "facing", facing === "usual" ? undefined : facing)}
        />
        <Offset {...{ session, snap, item, readOnly }} />
      </div>
      <TimeBounds {...{ session, snap, item, readOnly }} />
    </div>
  );
}

/** A move with springs has its offset beside the load curve. Here an offset that a move without springs still has. */
function Offset({ session, snap, item, readOnly }: SetupFieldsProps) {
  if (item.offsetMm === undefined || worksSprings(moveOf(snap.plan, item))) return null;
  return (
    <LengthField
      key={item.id}
      label={ITEM_WORDS.offset}
      value={item.offsetMm}
      min={-2000}
      max={2000}
      optional
      placeholder="0"
      disabled={readOnly}
      onCommit={(offset) => setField(session, item.id, "offsetMm", offset)}
    />
  );
}

function Transition({ session, snap, item, readOnly }: SetupFieldsProps) {
  const row = snap.rows.find((r) => r.item === item.id);
  if (!row) return null;
  const { estimate, telling } = row.transition;
  const isFirst = snap.plan.items.find((i) => i.kind === "move")?.id === item.id;
  return (
    <NumberField
      key={item.id}
      label={ITEM_WORDS.change}
      unit="s"
      value={item.transitionSeconds}
      optional
      placeholder={`${Math.max(estimate, telling)}`}
      hint={changeHint(snap.plan, row, isFirst)}
      disabled={readOnly}
      onCommit={(seconds) => setField(session, item.id, "transitionSeconds", seconds)}
    />
  );
}
