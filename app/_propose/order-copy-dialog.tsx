"use client";
/** Proposing another order of a block: its items in a list that is moved by keys or buttons, with the effect beside it. */
import { useMemo, useRef } from "react";
import { keyHandler } from "#app/_parts/commands/keys.ts";
import { nameOf } from "#app/_session/item-words.ts";
import { placedName } from "#app/_session/placed-name.ts";
import { headingAbove } from "#app/_session/proposals.ts";
import type { PlanSession } from "#app/_session/session.ts";
import { useSnapshot } from "#app/_session/use-session.ts";
import { itemById } from "#lib/plan/lookup.ts";
import type { Plan } from "#lib/plan/schema.ts";
import { blockIds, orderPart } from "#lib/proposal/block-order.ts";
import { useKeptCopy } from "./kept-copy.ts";
import { ORDER_COMMANDS } from "./order-commands.ts";
import { moved } from "./plate-copy.ts";
import styles from "./propose.module.css";
import { ProposeFrame } from "./propose-frame.tsx";
import { PROPOSE } from "./propose-words.ts";
import { useFocusNext } from "./use-focus-next.ts";
import { useWriting } from "./use-sending.ts";

interface OrderCopyDialogProps {
  readonly session: PlanSession;
  /** The heading of the block, or an item before the first heading. */
  readonly itemId: string;
  readonly onClosed: () => void;
}

interface OrderCopy {
  /** Ids as the block was when the copy was made. */
  readonly was: readonly string[];
  readonly ids: readonly string[];
  readonly note: string;
}

export function OrderCopyDialog({ session, itemId, onClosed }: OrderCopyDialogProps) {
  const { plan } = useSnapshot(session);
  const heading = useRef(headingAbove(plan.items, itemId)).current;
  const closer = useRef<(() => void) | null>(null);
  const kept = useKeptCopy<OrderCopy>(session, heading, () => {
    const was = blockIds(plan, heading) ?? [];
    return { was, ids: was, note: "" };
  });
  const { copy } = kept;
  const parts = useMemo(() => {
    const part = orderPart(heading, copy.was, copy.ids);
    return part ? [part] : [];
  }, [heading, copy]);
  const writing = useWriting(session, heading, parts);
  const above = heading === null ? undefined : itemById(plan, heading);
  const send = async () => {
    if (!(await writing.send(copy.note))) return;
    kept.drop();
    closer.current?.();
  };
  return (
    <ProposeFrame
      title={PROPOSE.orderTitle(above ? nameOf(plan, above) : PROPOSE.firstBlock)}
      {...{ plan, writing, closer, onClosed }}
      blocked={null}
      wasKept={kept.wasKept}
      onAgain={kept.again}
      note={copy.note}
      onNote={(note) => kept.set({ ...copy, note })}
      onSend={send}
    >
      <OrderList plan={plan} ids={copy.ids} onChange={(ids) => kept.set({ ...copy, ids })} />
    </ProposeFrame>
  );
}

interface OrderListProps {
  readonly plan: Plan;
  readonly ids: readonly string[];
  readonly onChange: (ids: readonly string[]) => void;
}

function OrderList({ plan, ids, onChange }: OrderListProps) {
  const list = useRef<HTMLOListElement>(null);
  const focusNext = useFocusNext(list);
  const move = (id: string, by: -1 | 1) => {
    const next = moved(ids, ids.indexOf(id), by);
    const to = next.indexOf(id);
    const isAtEnd = by === -1 ? to === 0 : to === next.length - 1;
    focusNext(`[data-item="${id}"] [data-by="${isAtEnd ? -by : by}"]`);
    onChange(next);
  };
  const onKeyDown = (id: string) =>
    keyHandler(ORDER_COMMANDS, "order", { run: { "place-up": () => move(id, -1), "place-down": () => move(id, 1) } });
  return (
    <>
      <p className="quiet small">{PROPOSE.orderHint}</p>
      <ol ref={list} className={styles.order}>
        {ids.map((id, at) => {
          const item = itemById(plan, id);
          const name = item ? placedName(plan, item) : PROPOSE.outItem;
          return (
            <li key={id} data-item={id} onKeyDown={onKeyDown(id)}>
              <span className={styles.orderName}>
                <span className={styles.place}>{at + 1}</span> {name}
              </span>
              <Way name={name} by={-1} disabled={at === 0} onMove={() => move(id, -1)} />
              <Way name={name} by={1} disabled={at === ids.length - 1} onMove={() => move(id, 1)} />
            </li>
          );
        })}
      </ol>
    </>
  );
}

interface WayProps {
  readonly name: string;
  readonly by: -1 | 1;
  readonly disabled: boolean;
  readonly onMove: () => void;
}

const Way = ({ name, by, disabled, onMove }: WayProps) => (
  <button
    type="button"
    className="square-button"
    data-by={by}
    aria-label={by === -1 ? PROPOSE.up(name) : PROPOSE.down(name)}
    disabled={disabled}
    onClick={onMove}
  >
    {by === -1 ? "↑" : "↓"}
  </button>
);
