"use client";
/** Everything about the chosen item: its words first, what was found and said about it, its numbers, and a drawer of the rest. */
import { useState } from "react";
import { DraftLines } from "#app/_draft/draft-lines.tsx";
import { DraftOfBlock } from "#app/_draft/draft-of-block.tsx";
import { useFirstDraft } from "#app/_draft/use-first-draft.ts";
import { ChangeThreads } from "#app/_margin/change-threads.tsx";
import { Margin } from "#app/_margin/margin.tsx";
import { HoldFields } from "#app/_order/hold-fields.tsx";
import { latePlateProposals } from "#app/_propose/late-propose.ts";
import { latePlateChange } from "#app/_rounds/late-rounds.ts";
import { ScriptEditor } from "#app/_script/script-editor.tsx";
import { sideWords } from "#lib/plan/format.ts";
import { moveOf, own } from "#lib/plan/lookup.ts";
import type { MoveItem, PlanItem } from "#lib/plan/schema.ts";
import { lateItemLoad } from "../../_load/late-load.ts";
import { ChoiceField } from "../../_parts/choice.tsx";
import { LatePart } from "../../_parts/late-part.tsx";
import { MovePicker } from "../../_parts/move-picker.tsx";
import styles from "../../_parts/panel.module.css";
import { tintOf } from "../../_parts/plate/tint.ts";
import { changeItemMove, setField, sidesOf } from "../../_session/acts.ts";
import { nameOf } from "../../_session/item-words.ts";
import { lateChange } from "../../_session/late-change.ts";
import { PlanButton } from "../../_session/page-acts.tsx";
import { ITEM_ACTS } from "../../_session/plan-commands.ts";
import { hasProposals } from "../../_session/proposals.ts";
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
  /** Inside its plate, which has its name already, or beside another view. */
  readonly inPlate?: boolean;
}

export function ItemPanel(props: ItemPanelProps) {
  return (
    <>
      <LatePart part={latePlateChange} props={{ session: props.session, itemId: props.item.id }} meanwhile={null} />
      <ItemItself {...props} />
    </>
  );
}

function ItemItself({ session, snap, item, inPlate = false }: ItemPanelProps) {
  const own = { session, snap, readOnly: !session.canWrite };
  const inDraft = useFirstDraft(session, snap).has(item.id);
  return (
    <section
      className={inPlate ? styles.inPlate : styles.panel}
      data-kind={item.kind}
      aria-label={`Item: ${nameOf(snap.plan, item)}`}
    >
      {inPlate ? <h2 className="visually-hidden">{nameOf(snap.plan, item)}</h2> : <PanelHead snap={snap} item={item} />}
      {item.kind === "move" && (
        <div className={styles.script}>
          <h3 className={inPlate ? "visually-hidden" : undefined}>{ITEM_WORDS.script}</h3>
          <DraftLines session={session} item={item} />
          <ScriptEditor session={session} itemId={item.id} readOnly={own.readOnly} />
        </div>
      )}
      <div className={styles.foot}>
        {hasProposals(snap, item.id) && (
          <LatePart part={latePlateProposals} props={{ session, itemId: item.id }} meanwhile={null} />
        )}
        <Margin session={session} about={item.id} inDraft={inDraft} />
        {item.kind === "move" && (
          <>
            <LatePart part={lateChange} props={{ plan: snap.plan, itemId: item.id }} meanwhile={null} />
            <ChangeThreads session={session} item={item} />
          </>
        )}
      </div>
      <div className={styles.numbers}>
        {item.kind === "move" ? <MoveNumbers {...own} item={item} /> : <OtherNumbers {...own} item={item} />}
        <ItemActs />
      </div>
      {item.kind === "move" && <MoveDrawer {...own} item={item} />}
    </section>
  );
}

const ItemActs = () => (
  <div className="acts light">
    {ITEM_ACTS.map((command) => (
      <PlanButton key={command} command={command} />
    ))}
  </div>
);

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

interface PartProps<I extends PlanItem = MoveItem> {
  readonly session: PlanSession;
  readonly snap: SessionSnapshot;
  readonly item: I;
  readonly readOnly: boolean;
}

function OtherNumbers({ session, snap, item, readOnly }: PartProps<Exclude<PlanItem, MoveItem>>) {
  return (
    <>
      <ItemLabel session={session} item={item} readOnly={readOnly} />
      {item.kind === "heading" && <DraftOfBlock session={session} snap={snap} headingId={item.id} />}
      {item.kind === "pause" && <TimeFields {...{ session, snap, item, readOnly }} />}
    </>
  );
}

/** Time, side and springs: what is changed most. */
function MoveNumbers({ session, snap, item, readOnly }: PartProps) {
  const sides = withCurrent(sidesOf(moveOf(snap.plan, item)), item.side);
  return (
    <>
      <TimeFields {...{ session, snap, item, readOnly }} />
      {sides.length > 1 && (
        <ChoiceField
          label={ITEM_WORDS.side}
          value={item.side}
          options={sides.map((side) => ({ value: side, label: sideWords(side) }))}
          disabled={readOnly}
          onChoose={(side) => setField(session, item.id, "side", side)}
        />
      )}
      <SpringSteppers session={session} item={item} equipment={snap.plan.equipment} disabled={readOnly} />
    </>
  );
}

/** Whether the drawer is open stays as it was left, from item to item. */
let leftOpen = false;

/** What is asked for now and then: how heavy it is, how people change into it, its place in the block, what the library says. */
function MoveDrawer({ session, snap, item, readOnly }: PartProps) {
  const move = moveOf(snap.plan, item);
  return (
    <details
      className={styles.drawer}
      open={leftOpen || move === undefined}
      onToggle={(event) => {
        if (event.target === event.currentTarget) leftOpen = event.currentTarget.open;
      }}
    >
      <summary>{ITEM_WORDS.drawer}</summary>
      <div className={styles.drawn}>
        <LatePart part={lateItemLoad} props={{ session, snap, item, readOnly }} meanwhile={null} />
        <SetupFields {...{ session, snap, item, readOnly }} />
        <HoldFields {...{ session, item, readOnly }} plan={snap.plan} />
        {move && (
          <ItemMoveFacts move={move} page={own(session.studio.moves, item.move) ? `/library/${item.move}` : null} />
        )}
        {!readOnly && <MoveChange key={item.id} {...{ session, snap, item }} />}
      </div>
    </details>
  );
}

/** Puts another move in its place. Open from the start while the move is not known. */
function MoveChange({ session, snap, item }: Omit<PartProps, "readOnly">) {
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
          equipment={snap.plan.equipment}
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
