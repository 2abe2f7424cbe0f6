/** A plan as it is about to be signed: in figures, item by item, with its findings and what stands in the way. */
import { nameOf } from "#app/_plan/words.ts";
import { type ClockRow, classClock } from "#lib/clock/clock.ts";
import { KIND_WORDS } from "#lib/editor/words.ts";
import { springWords } from "#lib/plan/format.ts";
import type { MoveItem, Plan } from "#lib/plan/schema.ts";
import { LEVEL_WORDS } from "#lib/rules/level-words.ts";
import { FindingList } from "./finding-list.tsx";
import { FromFileView } from "./from-file-view.tsx";
import styles from "./margin.module.css";
import type { Reading } from "./reading.ts";

export function ReadingView({ reading }: { readonly reading: Reading }) {
  const { plan, findings, blockers, changedSince, fromFile } = reading;
  return (
    <div className={styles.dialog}>
      {blockers.length > 0 && (
        <div id="sign-off-blockers" className="problem">
          <p>It cannot be signed off yet:</p>
          <ul>
            {blockers.map((blocker) => (
              <li key={blocker.code}>{blocker.message}</li>
            ))}
          </ul>
        </div>
      )}
      {changedSince && changedSince.length > 0 && (
        <div className="notice">
          <p>Changed since you read it last:</p>
          <ul>
            {changedSince.map((change) => (
              <li key={change.message}>{change.message}</li>
            ))}
          </ul>
        </div>
      )}
      <FromFileView fromFile={fromFile} />
      {plan && <Figures plan={plan} />}
      {(["must", "look", "info"] as const).map((level) => {
        const own = findings.filter((f) => f.level === level);
        if (own.length === 0) return null;
        return (
          <div key={level}>
            <h3>
              {LEVEL_WORDS[level]}: {own.length}
            </h3>
            <FindingList findings={own} />
          </div>
        );
      })}
      {findings.length === 0 && <p>The checks found nothing.</p>}
      <p className="quiet small mono">this exact plan: {reading.hash.slice(0, 12)}</p>
    </div>
  );
}

function Figures({ plan }: { readonly plan: Plan }) {
  const { rows, total } = classClock(plan);
  const moves = plan.items.filter((item) => item.kind === "move");
  const said = moves.flatMap((item) => item.script ?? []).filter((line) => line.kind !== "crew").length;
  const byItem = new Map(rows.map((row) => [row.item, row]));
  return (
    <>
      <dl className={styles.summary}>
        <Figure name="title" value={plan.title || "Untitled"} />
        <Figure name="runs" value={`${minutes(total)} of ${minutes(plan.lengthSeconds)}`} />
        <Figure name="moves" value={String(moves.length)} />
        <Figure name="lines to say" value={String(said)} />
      </dl>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a list that scrolls must be reachable by keyboard */}
      <ol className={styles.contents} aria-label="Item by item" tabIndex={0}>
        {plan.items.map((item) => (
          <li key={item.id}>
            <time>{minutes(byItem.get(item.id)?.start ?? 0)}</time>
            <span>
              {item.kind === "heading" ? <strong>{nameOf(plan, item)}</strong> : nameOf(plan, item)}
              {item.kind === "move" && (item.side === "left" || item.side === "right") && `, ${item.side}`}
            </span>
            <span className="mono">{item.kind === "heading" ? "" : `${item.seconds} s`}</span>
            {item.kind === "move" && <MoveWords plan={plan} item={item} row={byItem.get(item.id)} />}
          </li>
        ))}
      </ol>
    </>
  );
}

/** What the floor will do and hear of a move: springs, the change into it, every line. It is what is signed. */
function MoveWords({ plan, item, row }: { plan: Plan; item: MoveItem; row: ClockRow | undefined }) {
  const change = row ? (row.transition.planned ?? row.transition.estimate) : 0;
  return (
    <div className={styles.signed}>
      <p className="quiet small">
        {springWords(plan.equipment, item.springs)}
        {change > 0 && ` · ${change} s to change`}
      </p>
      {(item.script ?? []).map((line, i) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: the lines of a reading never change
        <p key={i} className="small">
          <span className="quiet">{KIND_WORDS[line.kind]}</span> {line.text}
        </p>
      ))}
    </div>
  );
}

const Figure = ({ name, value }: { readonly name: string; readonly value: string }) => (
  <div>
    <dt>{name}</dt>
    <dd>{value}</dd>
  </div>
);

/** "24:46". */
function minutes(seconds: number): string {
  const whole = Math.round(seconds);
  return `${Math.floor(whole / 60)}:${String(whole % 60).padStart(2, "0")}`;
}
