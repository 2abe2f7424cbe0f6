"use client";
/** The screen before a draft is rehearsed: what it is for, how to tap, which keys, its cautions. */
import type { Settings } from "#app/floor/_parts/use-settings.ts";
import { DeviceSettings } from "#app/floor/_ready/device-settings.tsx";
import styles from "#app/floor/_ready/ready-screen.module.css";
import type { Card } from "#lib/card/schema.ts";
import { keysOfAct } from "#lib/floor/keys.ts";
import { clockTime } from "#lib/plan/format.ts";
import { planTitle } from "#lib/plan/plan-title.ts";

interface Props {
  readonly card: Card;
  readonly settings: Settings;
  readonly back: string;
  onStart(): void;
}

export function DraftReady({ card, settings, back, onStart }: Props) {
  const taps = `${keysOfAct("hold-or-go-on", settings.keys)}, ${keysOfAct("next", settings.keys)}`;
  return (
    <div className={styles.ready}>
      <header>
        <h1 className={styles.title}>{planTitle(card.edition.title)}</h1>
        <p className={styles.about}>
          A draft, not signed off: for rehearsing only, not for teaching · {card.room.name} ·{" "}
          {clockTime(card.clock.total)}
        </p>
      </header>
      <div className={styles.acts}>
        {/* biome-ignore lint/a11y/noAutofocus: the screen has one purpose, and a pedal or Enter should begin */}
        <button type="button" className={`button button-strong ${styles.start}`} onClick={onStart} autoFocus>
          Start the rehearsal
        </button>
        <a className="button" href={back}>
          Back to the plan
        </a>
      </div>
      <section className={styles.part}>
        <h2>One tap for everything</h2>
        <p>
          Say each line aloud and tap as it is said. Do each change of set-up and tap as it is done: the clock waits for
          you there. Tap the large target, or press {taps}.
        </p>
      </section>
      <DeviceSettings settings={settings} />
      <Cautions cautions={card.cautions} />
    </div>
  );
}

function Cautions({ cautions }: Pick<Card, "cautions">) {
  return (
    <section className={styles.part}>
      <h2>Cautions</h2>
      <p>This class asks for: {cautions.asked.map((asked) => asked.words).join("; ") || "nothing in particular"}.</p>
      <ul className={styles.note}>
        {cautions.note.map((sentence) => (
          <li key={sentence}>{sentence}</li>
        ))}
      </ul>
    </section>
  );
}
