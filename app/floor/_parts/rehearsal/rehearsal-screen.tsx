"use client";
/** The floor with no class: the same class on the same clock, and one great target to tap as things are really done. */
import { useEffect, useMemo, useRef } from "react";
import { PageKeys, type PageKeysProps } from "#app/_shell/key-help.tsx";
import type { Card } from "#lib/card/schema.ts";
import type { ClassLog } from "#lib/floor/class-log-schema.ts";
import { type KeyAct, type KeyChoice, keysOfAct } from "#lib/floor/keys.ts";
import { typeSizes } from "#lib/floor/legibility.ts";
import { minutesSeconds, secondsFigure } from "#lib/floor/time-words.ts";
import type { FloorView } from "#lib/floor/view.ts";
import { useAwake } from "../awake.ts";
import { useCalls } from "../calls.ts";
import { Coming } from "../coming.tsx";
import { Doing } from "../doing.tsx";
import { FitText } from "../fit-text.tsx";
import { useFloorKeys } from "../keys.ts";
import live from "../live-class.module.css";
import type { Settings } from "../use-settings.ts";
import styles from "./rehearsal.module.css";
import { RehearsalTargets } from "./rehearsal-targets.tsx";
import { type KeptRehearsal, type RunningRehearsal, useRehearsal } from "./use-rehearsal.ts";

interface Props {
  readonly card: Card;
  /** Said on top beside the word Rehearsal: "edition 2" or "draft, not signed". */
  readonly of: string;
  readonly settings: Settings;
  readonly resumed: KeptRehearsal | null;
  keep(rehearsal: KeptRehearsal): void;
  /** It is over, by its clock or by hand. */
  onDone(told: ClassLog): void;
}

export function RehearsalScreen({ card, of, settings, resumed, keep, onDone }: Props) {
  const run = useRehearsal(card, resumed, keep);
  const { view } = run;
  const sizes = useMemo(() => typeSizes(settings.distanceM), [settings.distanceM]);
  useTold(run, onDone);
  useAwake();
  useCalls(view, settings);
  const acts: Partial<Record<KeyAct, () => void>> = {
    "hold-or-go-on": run.tap,
    next: run.tap,
    back: () => run.act("back"),
  };
  useFloorKeys(settings.keys, (act) => acts[act]?.());
  const keys = useMemo(() => rehearsalKeys(settings.keys), [settings.keys]);
  const name = view.item?.name ?? (view.phase === "closing" ? "Closing" : "Opening");
  return (
    <div
      className={`${live.live} ${styles.rehearsal}`}
      data-phase={view.phase}
      style={{ "--seconds": `${sizes.seconds}px`, "--minutes": `${sizes.minutes}px` } as React.CSSProperties}
    >
      <PageKeys of={keys} />
      <div className={live.rail} style={{ "--done": view.progress } as React.CSSProperties}>
        <span />
      </div>
      <header className={live.top}>
        <span>
          <strong className={styles.mark}>Rehearsal, no class</strong> {card.edition.title} · {of}
        </span>
        <span className={live.figures}>
          {view.number > 0 ? `${view.number} of ${view.of} · ` : ""}
          {minutesSeconds(view.left)} left
        </span>
      </header>
      <section className={live.now} aria-label="Now">
        <FitText className={live.name} sizes={sizes.name} text={name}>
          {name}
        </FitText>
        <Figure view={view} waiting={run.waiting} />
      </section>
      <Doing view={view} equipment={card.plan.equipment} />
      <FitText className={live.line} sizes={sizes.line} text={lineWords(run)}>
        <span data-now={run.line?.now ?? false}>{lineWords(run)}</span>
      </FitText>
      <Coming view={view} equipment={card.plan.equipment} />
      <RehearsalTargets run={run} />
      <p className="visually-hidden" aria-live="polite">
        {name}
        {run.waiting > 0 ? ", waiting for your set-up" : view.held ? ", held" : ""}
      </p>
    </div>
  );
}

/** Hands over what it was, once, when it is over. */
function useTold(run: RunningRehearsal, onDone: (told: ClassLog) => void): void {
  const latest = useRef({ run, onDone });
  latest.current = { run, onDone };
  const handed = useRef(false);
  const over = run.view.phase === "done";
  useEffect(() => {
    const told = over && !handed.current ? latest.current.run.told() : null;
    if (!told) return;
    handed.current = true;
    latest.current.onDone(told);
  }, [over]);
}

function lineWords({ line, meaning }: RunningRehearsal): string {
  if (line) return line.now ? line.beat.text : `next: ${line.beat.text}`;
  return meaning.kind === "set-up" ? "Set up; tap when it is done." : "";
}

function Figure({ view, waiting }: { readonly view: FloorView; readonly waiting: number }) {
  const over = waiting > 0;
  const figure = over ? `+${secondsFigure(Math.floor(waiting))}` : secondsFigure(view.secondsLeft);
  return (
    <div className={live.seconds} data-held={view.held} role="timer" aria-live="off">
      <span className={live.figure} data-long={figure.length > 2}>
        {figure}
      </span>
      <span className={live.unit}>{over ? "waits for your set-up" : view.held ? "held" : unitOf(view)}</span>
    </div>
  );
}

function unitOf({ phase, secondsLeft }: FloorView): string {
  const unit = secondsLeft < 100 ? "seconds" : "minutes";
  return phase === "change" ? `${unit} to change` : `${unit} left`;
}

const rehearsalKeys = (chosen: KeyChoice): PageKeysProps => ({
  parts: [
    {
      title: "In the rehearsal",
      keys: [
        [`${keysOfAct("hold-or-go-on", chosen)}, ${keysOfAct("next", chosen)}`, "a line is said, or a set-up is done"],
        [keysOfAct("back", chosen), "back to the start of this move; twice, to the one before"],
      ],
    },
  ],
});
