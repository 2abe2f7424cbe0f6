/** One order of a block as a list: every item with the change into it, and where a moved item comes from. */
import { Seconds } from "#app/_parts/seconds.tsx";
import { actionsWords, nameOf } from "#app/_session/item-words.ts";
import { secondsWords, sideWords } from "#lib/plan/format.ts";
import type { Plan } from "#lib/plan/schema.ts";
import type { Change } from "#lib/transitions/transitions.ts";
import styles from "./order.module.css";
import { movedPlaceWords } from "./order-words.ts";
import type { OrderLine, OrderList } from "./preview.ts";

interface ColumnProps {
  readonly title: string;
  readonly list: OrderList;
  readonly plan: Plan;
  /** Estimated seconds of all changes together. */
  readonly seconds: number;
  /** Moved items say where they come from. */
  readonly marked?: boolean;
}

export function OrderColumn({ title, list, plan, seconds, marked = false }: ColumnProps) {
  return (
    <section className={styles.column} data-better={marked || undefined} aria-label={title}>
      <h3 className={styles.small}>
        {title}
        <Seconds value={seconds} />
      </h3>
      <ol className={styles.list}>
        {list.lines.map((line) => (
          <li key={line.item.id} data-moved={line.moved || undefined}>
            {line.item.kind === "move" && <ChangeLine change={line.change} opens={line.opens} />}
            <Name line={line} plan={plan} />
            {marked && line.moved && <span className={styles.from}>{movedPlaceWords(line.other, line.place)}</span>}
          </li>
        ))}
      </ol>
      {list.next && (
        <div className={styles.then}>
          <ChangeLine change={list.next.change} />
          <span>{`then ${nameOf(plan, list.next.item)}`}</span>
        </div>
      )}
    </section>
  );
}

function Name({ line: { item, place }, plan }: { readonly line: OrderLine; readonly plan: Plan }) {
  const side = item.kind === "move" && item.side !== "both" ? `, ${sideWords(item.side)}` : "";
  return (
    <span className={styles.name}>
      <span className={styles.place} aria-hidden="true">
        {place}
      </span>
      {`${nameOf(plan, item)}${side}`}
    </span>
  );
}

function ChangeLine({ change, opens = false }: { readonly change: Change; readonly opens?: boolean }) {
  const words = actionsWords(change.actions);
  const nothing = opens ? "set up during the opening" : "nothing changes";
  return (
    <span className={styles.change}>
      {change.estimate === 0 ? nothing : `${secondsWords(change.estimate)}${words ? `: ${words}` : ""}`}
    </span>
  );
}
