/** Set-ups and lines of a rehearsal, planned beside one's own. */
import type { ChangeTake, Chosen, NoMatch, RehearsalTake } from "#lib/floor/rehearsal-take.ts";
import type { Rehearsed } from "#lib/floor/rehearsed-schema.ts";
import { agree, itemName, plainNumber, plural, tagWords } from "#lib/plan/format.ts";
import { itemById } from "#lib/plan/lookup.ts";
import type { Plan } from "#lib/plan/schema.ts";
import styles from "./rehearsal.module.css";

const NO_MATCH: Readonly<Record<NoMatch, string>> = {
  "item-gone": "taken out since",
  "other-move-before": "it comes after another move now",
  "other-set-up": "its set-up is another now",
};

interface ChangeTableProps {
  readonly plan: Plan;
  readonly take: RehearsalTake;
  readonly chosen: Chosen;
  onChoose(item: string, on: boolean): void;
}

export function ChangeTable({ plan, take, chosen, onChoose }: ChangeTableProps) {
  if (take.changes.length === 0) return <p>No set-up was tapped as done.</p>;
  return (
    <div className="table-scroll">
      <table className={styles.table}>
        <caption className="visually-hidden">Changes of set-up: planned and yours, in seconds</caption>
        <thead>
          <tr>
            <th scope="col">take</th>
            <th scope="col">change to</th>
            <th scope="col" className="number">
              plan now
            </th>
            <th scope="col" className="number">
              yours
            </th>
            <th scope="col">to know</th>
          </tr>
        </thead>
        <tbody>
          {take.changes.map((change) => (
            <ChangeRow
              key={change.item}
              name={nameIn(plan, change.item)}
              change={change}
              on={chosen.items.has(change.item)}
              onChoose={(on) => onChoose(change.item, on)}
            />
          ))}
        </tbody>
      </table>
    </div>
  );
}

interface ChangeRowProps {
  readonly name: string;
  readonly change: ChangeTake;
  readonly on: boolean;
  onChoose(on: boolean): void;
}

function ChangeRow({ name, change, on, onChoose }: ChangeRowProps) {
  const { noMatch, took, now, to, estimate, belowEstimate, planned } = change;
  const takes = noMatch === null && to !== now;
  return (
    <tr>
      <td>
        {takes ? (
          <label className={styles.take}>
            <input type="checkbox" checked={on} onChange={(event) => onChoose(event.target.checked)} />
            <span className="visually-hidden">
              Take {to} s for the change to {name}
            </span>
          </label>
        ) : (
          <span className="quiet small">{noMatch === null ? "as it is" : "no"}</span>
        )}
      </td>
      <th scope="row">{name}</th>
      <td className="number">{plainNumber(now)} s</td>
      <td className="number">
        {plainNumber(took)} s{takes && <strong> → {to} s</strong>}
      </td>
      <td>
        {noMatch !== null && `${NO_MATCH[noMatch]} (${plainNumber(planned)} s planned then)`}
        {takes && belowEstimate && `less than the ${plainNumber(estimate)} s that a room of people needs for it`}
      </td>
    </tr>
  );
}

function nameIn(plan: Plan, id: string): string {
  const item = itemById(plan, id);
  return item ? itemName(plan, item) : "an item that is gone";
}

export function LineTable({ plan, lines }: { readonly plan: Plan; readonly lines: Rehearsed["lines"] }) {
  if (lines.length === 0) return null;
  const longer = lines.filter(({ planned, took }) => took > planned + 1).length;
  return (
    <details>
      <summary>
        {plural(lines.length, "line")} as you said {agree(lines.length, "it", "them")}
        {longer > 0 && `, ${longer} a second or more longer than planned`}
      </summary>
      <div className="table-scroll">
        <table className={styles.table}>
          <thead>
            <tr>
              <th scope="col">in</th>
              <th scope="col">line</th>
              <th scope="col" className="number">
                planned
              </th>
              <th scope="col" className="number">
                yours
              </th>
            </tr>
          </thead>
          <tbody>
            {lines.map(({ item, kind, text, planned, took }, n) => (
              // biome-ignore lint/suspicious/noArrayIndexKey: a list that never changes; a line may stand twice in it
              <tr key={n}>
                <td>{nameIn(plan, item)}</td>
                <td>
                  <span className="quiet small">{tagWords(kind)}</span> {text}
                </td>
                <td className="number">{plainNumber(planned)} s</td>
                <td className="number">{plainNumber(took)} s</td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
    </details>
  );
}
