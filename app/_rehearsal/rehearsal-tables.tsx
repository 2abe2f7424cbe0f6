/** Changes and lines of a rehearsal: planned seconds beside the coach's own. */
import type { ChangeTake, Chosen, RehearsalTake } from "#lib/floor/rehearsal-take.ts";
import type { Rehearsed } from "#lib/floor/rehearsed-schema.ts";
import { plainNumber, tagWords } from "#lib/plan/format.ts";
import type { Plan } from "#lib/plan/schema.ts";
import styles from "./rehearsal.module.css";
import { changeNote, linesWords, NO_SET_UP_MARKED, nameIn } from "./rehearsals-words.ts";

interface ChangeTableProps {
  readonly plan: Plan;
  readonly take: RehearsalTake;
  readonly chosen: Chosen;
  onChoose(item: string, on: boolean): void;
}

export function ChangeTable({ plan, take, chosen, onChoose }: ChangeTableProps) {
  if (take.changes.length === 0) return <p>{NO_SET_UP_MARKED}</p>;
  return (
    <div className="table-scroll">
      <table className={styles.table}>
        <caption className="visually-hidden">Changes: planned and yours, in seconds</caption>
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
            <th scope="col">note</th>
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
  const { noMatch, took, now, to } = change;
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
          <span className="quiet small">{noMatch === null ? "no difference" : "not possible"}</span>
        )}
      </td>
      <th scope="row">{name}</th>
      <td className="number">{plainNumber(now)} s</td>
      <td className="number">
        {plainNumber(took)} s{takes && <strong> → {to} s</strong>}
      </td>
      <td>{changeNote(change)}</td>
    </tr>
  );
}

export function LineTable({ plan, lines }: { readonly plan: Plan; readonly lines: Rehearsed["lines"] }) {
  if (lines.length === 0) return null;
  return (
    <details>
      <summary className={styles.summary}>{linesWords(lines)}</summary>
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
            {lines.map((line, n) => (
              // biome-ignore lint/suspicious/noArrayIndexKey: a list that never changes; a line may appear twice in it
              <LineRow key={n} plan={plan} line={line} />
            ))}
          </tbody>
        </table>
      </div>
    </details>
  );
}

function LineRow({ plan, line }: { readonly plan: Plan; readonly line: Rehearsed["lines"][number] }) {
  const { item, kind, text, planned, took } = line;
  return (
    <tr>
      <td>{nameIn(plan, item)}</td>
      <td>
        <span className="quiet small">{tagWords(kind)}</span> {text}
      </td>
      <td className="number">{plainNumber(planned)} s</td>
      <td className="number">{plainNumber(took)} s</td>
    </tr>
  );
}
