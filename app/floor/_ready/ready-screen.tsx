"use client";
/** The last look before a class: is it the right card, what the first set-up is, which keys do what, what to be careful of. */
import { useMemo } from "react";
import { PageKeys, type PageKeysProps } from "#app/_parts/key-help.tsx";
import type { Card } from "#lib/card/schema.ts";
import { KEY_ACT_WORDS, KEY_ACTS, type KeyChoice, keysOfAct } from "#lib/floor/keys.ts";
import { floorClass } from "#lib/floor/view.ts";
import { clockTime } from "#lib/plan/format.ts";
import { FloorCoils } from "../../_parts/coils/floor-coils.tsx";
import { KeyTable } from "../_parts/key-table.tsx";
import type { Settings } from "../_parts/use-settings.ts";
import { type Worker, workerWords } from "../_parts/worker-state.ts";
import { DeviceSettings } from "./device-settings.tsx";
import styles from "./ready-screen.module.css";

const classKeys = (chosen: KeyChoice): PageKeysProps => ({
  parts: [
    { title: "In the class", keys: KEY_ACTS.map((act) => [keysOfAct(act, chosen), KEY_ACT_WORDS[act]] as const) },
  ],
});

interface Props {
  readonly card: Card;
  readonly worker: Worker;
  readonly settings: Settings;
  onBack(): void;
  onStart(): void;
  /** The same with no class. */
  onRehearse(): void;
}

export function ReadyScreen({ card, worker, settings, onBack, onStart, onRehearse }: Props) {
  const cls = floorClass(card);
  const first = cls.order.map((id) => cls.items.get(id)).find((item) => item?.kind === "move");
  const canFill = typeof document !== "undefined" && document.fullscreenEnabled;
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
      <div className={styles.acts}>
        {/* biome-ignore lint/a11y/noAutofocus: the screen has one purpose, and a pedal or Enter should begin the class */}
        <button type="button" className={`button button-strong ${styles.start}`} onClick={onStart} autoFocus>
          Start the class
        </button>
        <button type="button" className="button" onClick={onRehearse}>
          Rehearse it, no class
        </button>
        {canFill && (
          <button type="button" className="button" onClick={() => document.documentElement.requestFullscreen()}>
            Fill the screen
          </button>
        )}
        <button type="button" className="button" onClick={onBack}>
          Other card
        </button>
      </div>
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
        <h2>Keys and pedals</h2>
        <KeyTable chosen={settings.keys} onChoose={(keys) => settings.set({ keys })} />
        <p className="quiet">{workerWords[worker]}</p>
      </section>
      <section className={styles.part}>
        <h2>With care</h2>
        {card.cautions.expected.length > 0 && <p>Expected in the room: {card.cautions.expected.join(", ")}.</p>}
        <p>This class asks for: {card.cautions.asked.map((asked) => asked.words).join("; ") || "nothing tagged"}.</p>
        <ul className={styles.note}>
          {card.cautions.note.map((sentence) => (
            <li key={sentence}>{sentence}</li>
          ))}
        </ul>
      </section>
    </div>
  );
}
