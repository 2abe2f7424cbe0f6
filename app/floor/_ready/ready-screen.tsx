"use client";
/** The last check before a class: is it the right edition, what is the first set-up, which keys do what, what needs care. */
import { useMemo } from "react";
import { openKeyHelp, PageKeys, type PageKeysProps } from "#app/_parts/key-help.tsx";
import type { Card } from "#lib/card/schema.ts";
import { KEY_ACT_WORDS, KEY_ACTS, type KeyChoice, keysOfAct } from "#lib/floor/keys.ts";
import { floorClass } from "#lib/floor/view.ts";
import { clockTime } from "#lib/plan/format.ts";
import { FloorCoils } from "../../_parts/coils/floor-coils.tsx";
import { KEYS_AND_PEDALS, type WorkerState, workerWords } from "../_parts/floor-words.ts";
import { KeyTable } from "../_parts/key-table.tsx";
import type { Settings } from "../_parts/use-settings.ts";
import { DeviceSettings } from "./device-settings.tsx";
import styles from "./ready-screen.module.css";

const classKeys = (chosen: KeyChoice): PageKeysProps => ({
  parts: [
    { title: "In the class", keys: KEY_ACTS.map((act) => [keysOfAct(act, chosen), KEY_ACT_WORDS[act]] as const) },
  ],
});

interface Props {
  readonly card: Card;
  readonly worker: WorkerState;
  readonly settings: Settings;
  onBack(): void;
  onStart(): void;
  /** Starts a rehearsal of it instead. */
  onRehearse(): void;
}

export function ReadyScreen(props: Props) {
  const { card, worker, settings } = props;
  const cls = floorClass(card);
  const first = cls.order.map((id) => cls.items.get(id)).find((item) => item?.kind === "move");
  const keys = useMemo(() => classKeys(settings.keys), [settings.keys]);
  return (
    <div className={styles.ready}>
      <PageKeys of={keys} />
      <header>
        <h1 className={styles.title}>{card.edition.title}</h1>
        <p className={styles.about}>
          edition {card.edition.number} · {card.edition.shortName} · {card.room.name} · {clockTime(card.clock.total)} ·{" "}
          {cls.order.length} items
        </p>
      </header>
      <Acts {...props} />
      {first && (
        <section className={styles.part}>
          <h2>First: {first.name}</h2>
          <p className={styles.springs}>
            <FloorCoils springs={first.springs} equipment={card.plan.equipment} />{" "}
            {first.changes.map((c) => c.words).join(", ")}
          </p>
        </section>
      )}
      <DeviceSettings settings={settings} />
      <section className={styles.part}>
        <h2>{KEYS_AND_PEDALS}</h2>
        <KeyTable chosen={settings.keys} onChoose={(chosen) => settings.set({ keys: chosen })} />
        <p className="quiet">{workerWords[worker]}</p>
        <button type="button" className="button" onClick={openKeyHelp}>
          Help
        </button>
      </section>
      <WithCare card={card} />
    </div>
  );
}

function Acts({ onStart, onRehearse, onBack }: Props) {
  const canFill = typeof document !== "undefined" && document.fullscreenEnabled;
  return (
    <div className={styles.acts}>
      {/* biome-ignore lint/a11y/noAutofocus: the screen has one purpose, and a pedal or Enter should start the class */}
      <button type="button" className={`button button-strong ${styles.start}`} onClick={onStart} autoFocus>
        Start the class
      </button>
      <button type="button" className="button" onClick={onRehearse}>
        Rehearse without a class
      </button>
      {canFill && (
        <button type="button" className="button" onClick={() => document.documentElement.requestFullscreen()}>
          Full screen
        </button>
      )}
      <button type="button" className="button" onClick={onBack}>
        Other edition
      </button>
    </div>
  );
}

function WithCare({ card: { cautions } }: Pick<Props, "card">) {
  const { expected, asked, note } = cautions;
  return (
    <section className={styles.part}>
      <h2>With care</h2>
      {expected.length > 0 && <p>Expected in the room: {expected.join(", ")}.</p>}
      <p>This class asks for: {asked.map(({ words }) => words).join("; ") || "nothing tagged"}.</p>
      <ul className={styles.note}>
        {note.map((sentence) => (
          <li key={sentence}>{sentence}</li>
        ))}
      </ul>
    </section>
  );
}
