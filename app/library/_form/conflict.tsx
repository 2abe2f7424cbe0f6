"use client";
/**
 * Two people changed one move. What only the other changed can simply be taken along; where both changed a fact the
 * person chooses. Nothing is written over without being asked for.
 */
import { useEffect, useId, useRef, useState } from "react";
import { factLabel, type MoveKey, mergeMoves, moveChanges, withFacts } from "#lib/library/changes.ts";
import type { SpringNames } from "#lib/library/move-words.ts";
import type { Move } from "#lib/plan/schema.ts";
import type { MoveNow } from "#server/library/change-move.ts";
import styles from "./form.module.css";

interface ConflictProps {
  readonly base: Move;
  readonly mine: Move;
  readonly theirs: MoveNow;
  readonly names: SpringNames;
  readonly busy: boolean;
  /** Saves this from their state. */
  readonly onSave: (move: Move) => void;
  /** Throws away what was typed here. */
  readonly onTheirs: () => void;
}

export function Conflict({ base, mine, theirs, names, busy, onSave, onTheirs }: ConflictProps) {
  const [chosen, setChosen] = useState<ReadonlySet<MoveKey>>(new Set());
  const head = useRef<HTMLHeadingElement>(null);
  useEffect(() => head.current?.focus(), []);
  const who = theirs.byName ?? "Somebody";
  const merged = mergeMoves(base, mine, theirs.move);
  const changed = moveChanges(base, theirs.move, names);
  const ours = new Map(moveChanges(base, mine, names).map((change) => [change.key, change.after]));
  const choose = (key: MoveKey, take: boolean) =>
    setChosen(new Set(take ? [...chosen, key] : [...chosen].filter((other) => other !== key)));
  return (
    <section className={styles.conflict} aria-labelledby="conflict">
      <h2 id="conflict" ref={head} tabIndex={-1}>
        {who} changed this move while you were at it
      </h2>
      <p>
        Nothing was saved, and nothing you typed is lost.{theirs.archived ? " It was taken out of the library." : ""}
      </p>
      {changed.length > 0 ? (
        <dl className={styles.sides}>
          {changed.map(({ key, before, after }) => (
            <Fact
              key={key}
              label={factLabel(key)}
              who={who}
              words={{ before, theirs: after, mine: merged.both.includes(key) ? (ours.get(key) ?? before) : null }}
              theirs={chosen.has(key)}
              onChoose={(take) => choose(key, take)}
            />
          ))}
        </dl>
      ) : null}
      <p className={styles.acts}>
        <button
          type="button"
          className="button button-strong"
          aria-disabled={busy}
          onClick={() => onSave(withFacts(merged.move, theirs.move, [...chosen]))}
        >
          Put both together and save
        </button>
        <button type="button" className="button" aria-disabled={busy} onClick={() => onSave(mine)}>
          Save mine over it
        </button>
        <button type="button" className="button" aria-disabled={busy} onClick={onTheirs}>
          Drop mine
        </button>
      </p>
    </section>
  );
}

interface FactProps {
  readonly label: string;
  readonly who: string;
  /** `mine` null: only the other changed this one. */
  readonly words: { readonly before: string; readonly theirs: string; readonly mine: string | null };
  readonly theirs: boolean;
  readonly onChoose: (theirs: boolean) => void;
}

function Fact({ label, who, words, theirs, onChoose }: FactProps) {
  const name = useId();
  return (
    <div>
      <dt>{label}</dt>
      <dd>
        <span className="quiet">was {words.before}</span>
        {words.mine === null ? (
          <span>
            {who}: <strong>{words.theirs}</strong>
          </span>
        ) : (
          <fieldset className={styles.options}>
            <legend className="visually-hidden">{label}</legend>
            <label data-on={!theirs || undefined}>
              <input type="radio" name={name} checked={!theirs} onChange={() => onChoose(false)} />
              you: {words.mine}
            </label>
            <label data-on={theirs || undefined}>
              <input type="radio" name={name} checked={theirs} onChange={() => onChoose(true)} />
              {who}: {words.theirs}
            </label>
          </fieldset>
        )}
      </dd>
    </div>
  );
}
