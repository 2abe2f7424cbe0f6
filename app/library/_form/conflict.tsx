"use client";
import { useEffect, useId, useRef, useState } from "react";
/**
 * Two people changed one move. What only the other person changed is kept; where both changed a fact, this person
 * chooses. Nothing is overwritten unasked.
 */
import { useFormats } from "#app/_parts/formats.tsx";
import { factIn, factLabel, type MoveKey, mergeMoves, moveChanges, withFacts } from "#lib/library/changes.ts";
import type { SpringNames } from "#lib/library/move-words.ts";
import type { Move } from "#lib/plan/schema.ts";
/**
 * Two people changed one move. What only the other changed can simply be taken along; where both changed a fact the
 * person chooses. Nothing is written over without being asked for.
 */
import type { MoveNow } from "#server/library/refusals.ts";
import styles from "./form.module.css";

interface ConflictProps {
  readonly base: Move;
  readonly mine: Move;
  readonly theirs: MoveNow;
  readonly names: SpringNames;
  readonly busy: boolean;
  /** Saves this over what they saved. */
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
  const choose = (key: MoveKey, take: boolean) => setChosen(withOrWithout(chosen, key, take));
  return (
    <section className={`notice ${styles.conflict}`} aria-labelledby="conflict">
      <h2 id="conflict" ref={head} tabIndex={-1}>
        {who} changed this move while you were editing it
      </h2>
      <p>
        Your changes are not saved yet, and nothing you typed is lost.
        {theirs.archived ? " The move was taken out of the library meanwhile." : ""}
      </p>
      <Facts {...{ base, mine, theirs, names, who, both: merged.both, chosen, onChoose: choose }} />
      <ConflictActs
        busy={busy}
        onBoth={() => onSave(withFacts(merged.move, theirs.move, [...chosen]))}
        onMine={() => onSave(mine)}
        onTheirs={onTheirs}
      />
    </section>
  );
}

interface FactsProps extends Pick<ConflictProps, "base" | "mine" | "theirs" | "names"> {
  readonly who: string;
  /** What both changed. */
  readonly both: readonly MoveKey[];
  /** Where the other person's is taken. */
  readonly chosen: ReadonlySet<MoveKey>;
  readonly onChoose: (key: MoveKey, take: boolean) => void;
}

/** What the other person changed, fact by fact. */
function Facts({ base, mine, theirs, names, who, both, chosen, onChoose }: FactsProps) {
  const f = useFormats();
  const changed = moveChanges(base, theirs.move, names);
  if (changed.length === 0) return null;
  const ours = new Map(
    moveChanges(base, mine, names).map((change) => [change.key, factIn(change.key, change.after, f)]),
  );
  return (
    <dl className={styles.sides}>
      {changed.map(({ key, before, after }) => (
        <Fact
          key={key}
          label={factLabel(key)}
          who={who}
          words={{
            before: factIn(key, before, f),
            theirs: factIn(key, after, f),
            mine: both.includes(key) ? (ours.get(key) ?? factIn(key, before, f)) : null,
          }}
          theirs={chosen.has(key)}
          onChoose={(take) => onChoose(key, take)}
        />
      ))}
    </dl>
  );
}

const withOrWithout = <T,>(all: ReadonlySet<T>, one: T, take: boolean): ReadonlySet<T> =>
  new Set(take ? [...all, one] : [...all].filter((other) => other !== one));

interface ConflictActsProps {
  readonly busy: boolean;
  readonly onBoth: () => void;
  readonly onMine: () => void;
  readonly onTheirs: () => void;
}

function ConflictActs({ busy, onBoth, onMine, onTheirs }: ConflictActsProps) {
  return (
    <p className={`acts ${styles.acts}`}>
      <button type="button" className="button button-strong" aria-disabled={busy} onClick={onBoth}>
        Combine both and save
      </button>
      <button type="button" className="button" aria-disabled={busy} onClick={onMine}>
        Save mine instead
      </button>
      <button type="button" className="button" aria-disabled={busy} onClick={onTheirs}>
        Discard mine
      </button>
    </p>
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
          <fieldset className="options">
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
