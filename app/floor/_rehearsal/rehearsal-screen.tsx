"use client";
/** A rehearsal: the class on its own clock with nobody in the room, and one large target to tap when something is done. */
import { useEffect, useMemo, useRef } from "react";
import { PageKeys, type PageKeysProps } from "#app/_parts/key-help.tsx";
import type { Card } from "#lib/card/schema.ts";
import type { ClassLog } from "#lib/floor/class-log-schema.ts";
import type { KeptRehearsal } from "#lib/floor/kept-rehearsal.ts";
import { type KeyAct, type KeyChoice, keysOfAct } from "#lib/floor/keys.ts";
import { typeSizes } from "#lib/floor/legibility.ts";
import { minutesSeconds, secondsFigure } from "#lib/floor/time-words.ts";
import type { FloorView } from "#lib/floor/view.ts";
import live from "../_class/live-class.module.css";
import { useAwake } from "../_parts/awake.ts";
import { useCalls } from "../_parts/calls.ts";
import { Coming } from "../_parts/coming.tsx";
import { Doing } from "../_parts/doing.tsx";
import { FitText } from "../_parts/fit-text.tsx";
import { nowWords } from "../_parts/floor-words.ts";
import { useFloorKeys } from "../_parts/keys.ts";
import type { Settings } from "../_parts/use-settings.ts";
import styles from "./rehearsal.module.css";
import { RehearsalTargets } from "./rehearsal-targets.tsx";
import { figureUnit, NO_CLASS, SET_UP_THEN_TAP, stateWords } from "./rehearsal-words.ts";
import { type RunningRehearsal, useRehearsal } from "./use-rehearsal.ts";

interface Props {
  readonly card: Card;
  /** Shown on top beside the word Rehearsal: "edition 2" or "draft, not signed". */
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
  useRehearsalKeys(run, settings);
  const { equipment } = card.plan;
  return (
    <div
      className={`${live.live} ${styles.rehearsal}`}
      data-phase={view.phase}
      style={{ "--seconds": `${sizes.seconds}px`, "--minutes": `${sizes.minutes}px` } as React.CSSProperties}
    >
      <Top card={card} of={of} run={run} settings={settings} />
      <section className={live.now} aria-label="Now">
        <FitText className={live.name} sizes={sizes.name} text={nowWords(view)}>
          {nowWords(view)}
        </FitText>
        <Figure view={view} waiting={run.waiting} />
      </section>
      <Doing view={view} equipment={equipment} />
      <FitText className={live.line} sizes={sizes.line} text={lineWords(run)}>
        <span data-now={run.line?.now ?? false}>{lineWords(run)}</span>
      </FitText>
      <Coming view={view} equipment={equipment} />
      <RehearsalTargets run={run} />
      <p className="visually-hidden" aria-live="polite">
        {nowWords(view)}
        {stateWords(view.held, run.waiting > 0)}
      </p>
    </div>
  );
}

function useRehearsalKeys(run: RunningRehearsal, { keys }: Settings): void {
  const acts: Partial<Record<KeyAct, () => void>> = {
    "hold-or-go-on": run.tap,
    next: run.tap,
    back: () => run.act("back"),
  };
  useFloorKeys(keys, (act) => acts[act]?.());
}

type TopProps = Pick<Props, "card" | "of" | "settings"> & { readonly run: RunningRehearsal };

function Top({ card, of, settings, run: { view } }: TopProps) {
  const keys = useMemo(() => rehearsalKeys(settings.keys), [settings.keys]);
  return (
    <>
      <PageKeys of={keys} />
      <div className={live.rail} style={{ "--done": view.progress } as React.CSSProperties}>
        <span />
      </div>
      <header className={live.top}>
        <span>
          <strong className={styles.mark}>{NO_CLASS}</strong> {card.edition.title} · {of}
        </span>
        <span className={live.figures}>
          {view.number > 0 ? `${view.number} of ${view.of} · ` : ""}
          {minutesSeconds(view.left)} left
        </span>
      </header>
    </>
  );
}

/** Hands over the log, once, when the rehearsal is over. */
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
  return meaning.kind === "set-up" ? SET_UP_THEN_TAP : "";
}

function Figure({ view, waiting }: { readonly view: FloorView; readonly waiting: number }) {
  const over = waiting > 0;
  const figure = over ? `+${secondsFigure(Math.floor(waiting))}` : secondsFigure(view.secondsLeft);
  return (
    <div className={live.seconds} data-held={view.held} role="timer" aria-live="off">
      <span className={live.figure} data-long={figure.length > 2}>
        {figure}
      </span>
      <span className={live.unit}>{figureUnit(view, over)}</span>
    </div>
  );
}

const rehearsalKeys = (chosen: KeyChoice): PageKeysProps => ({
  parts: [
    {
      title: "In the rehearsal",
      keys: [
        [`${keysOfAct("hold-or-go-on", chosen)}, ${keysOfAct("next", chosen)}`, "a line was said, or a set-up is done"],
        [keysOfAct("back", chosen), "back to the start of this move; twice, to the one before"],
      ],
    },
  ],
});
