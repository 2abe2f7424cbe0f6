"use client";
import { latenessSentence } from "#lib/floor/time-words.ts";
/**
 * Before the class is made to end on time: the ways there are and what each costs, kept true second by second; one touch
 * takes one. The move and its seconds stay in sight above it, what comes and the targets below it: it never covers them.
 */
import type { EndingOption, WayId } from "#lib/floor/ways.ts";
import styles from "./on-time-sheet.module.css";
import type { RunningClass } from "./use-class.ts";

interface Props {
  readonly live: RunningClass;
  onClose(): void;
}

const WORDS: Readonly<Record<WayId, { readonly title: string; readonly take: string }>> = {
  rest: { title: "New times for what is left", take: "take these times" },
  closing: { title: "From the closing alone", take: "take it from the closing" },
  both: { title: "All that can give way", take: "take these times" },
};

export function OnTimeSheet({ live, onClose }: Props) {
  const { ways, say } = live.ways();
  const take = (way: WayId) => {
    live.endOnTime(way);
    onClose();
  };
  return (
    <section className={styles.sheet} role="dialog" aria-label="End on time">
      <header className={styles.head}>
        <div>
          <h2>{latenessSentence(live.view.lateBy)}</h2>
          {say && <p>{say}</p>}
        </div>
        <button type="button" onClick={onClose}>
          {ways.length > 0 ? "leave it" : "close"}
        </button>
      </header>
      {ways.length > 0 && (
        <div className={styles.body} data-scrolls>
          <div className={styles.columns}>
            {ways.map((way, n) => (
              <Choice key={way.id} way={way} first={n === 0} onTake={() => take(way.id)} />
            ))}
          </div>
          <div className={styles.columns}>
            {ways.map((way) => (
              <Changes key={way.id} way={way} />
            ))}
          </div>
        </div>
      )}
    </section>
  );
}

/** What a way comes to and costs, beside its act: all of them are seen before the first row of what changes. */
function Choice({ way, first, onTake }: { readonly way: EndingOption; readonly first: boolean; onTake(): void }) {
  const { title, take } = WORDS[way.id];
  return (
    <article className={styles.choice}>
      <div>
        <h3>{title}</h3>
        <p className={way.lateBy < 1 ? undefined : styles.late}>{way.ends}</p>
        {way.sentences.map((sentence) => (
          <p key={sentence} className={styles.late}>
            {sentence}
          </p>
        ))}
      </div>
      {/* biome-ignore lint/a11y/noAutofocus: the sheet was asked for to be taken, by Enter too */}
      <button type="button" className={first ? styles.take : undefined} onClick={onTake} autoFocus={first}>
        {take}
      </button>
    </article>
  );
}

function Changes({ way }: { readonly way: EndingOption }) {
  return (
    <ul className={styles.rows} aria-label={WORDS[way.id].title}>
      {way.rows.map((row) => (
        <li key={row.id}>
          <span>{row.name}</span>
          <span className={styles.seconds}>
            {row.from} to <strong>{row.to} s</strong>
          </span>
        </li>
      ))}
    </ul>
  );
}
