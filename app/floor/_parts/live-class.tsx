"use client";
/** The class on the floor: one thing at a time, read from across the room by somebody who moves. */
import { useEffect, useMemo, useState } from "react";
import type { Card, CardEnvelope } from "#lib/card/schema.ts";
import { withdrawnWords } from "#lib/card/withdrawn-words.ts";
import type { WithdrawnCard } from "#lib/floor/keep-cards.ts";
import type { KeyAct } from "#lib/floor/keys.ts";
import { typeSizes } from "#lib/floor/legibility.ts";
import { latenessWords, minutesSeconds, secondsFigure, unitWords } from "#lib/floor/time-words.ts";
import { isFreshSkip } from "#lib/floor/undo.ts";
import type { FloorView } from "#lib/floor/view.ts";
import { countWord } from "#lib/plan/format.ts";
import { LeaderNotice } from "../_line/leader-notice.tsx";
import { LeaderStatus } from "../_line/leader-status.tsx";
import { useLead } from "../_line/use-lead.ts";
import type { FloorLine } from "../_line/use-line.ts";
import { useAwake } from "./awake.ts";
import { useCalls } from "./calls.ts";
import { Coming } from "./coming.tsx";
import { Doing } from "./doing.tsx";
import { DoneScreen } from "./done-screen.tsx";
import { FitText } from "./fit-text.tsx";
import type { Running } from "./kept.ts";
import { KeyTable } from "./key-table.tsx";
import { useEscape, useFloorKeys } from "./keys.ts";
import styles from "./live-class.module.css";
import { OnTimeSheet } from "./on-time-sheet.tsx";
import { Targets } from "./targets.tsx";
import { useClass } from "./use-class.ts";
import { type ClassLogs, logsWords } from "./use-class-logs.ts";
import type { Settings } from "./use-settings.ts";
import { useSheet } from "./use-sheet.ts";

interface Props {
  readonly card: Card;
  readonly envelope: CardEnvelope;
  readonly running: Running | null;
  /** Set when its edition was taken out of use meanwhile: the class is not stopped. */
  readonly withdrawn: WithdrawnCard | undefined;
  readonly settings: Settings;
  readonly line: FloorLine;
  /** The logs that wait for the studio: a class that is over is told at once, whether or not anybody comes back to the screen. */
  readonly logs: ClassLogs;
  /** The class goes on on another screen; this one follows it. */
  onFollow(): void;
  onLeave(): void;
}

export function LiveClass({ card, envelope, running, withdrawn, settings, line, logs, onFollow, onLeave }: Props) {
  const live = useClass(card, envelope, running);
  // A class that another screen leads to its end is filed by that screen.
  const leave = (then: () => void) => live.leave(!lead.sameClass).finally(then);
  const lead = useLead(line, card, live, () => leave(onFollow));
  const { view } = live;
  // Nobody is told of an end that may be a slip.
  const over = view.phase === "done" && !lead.sameClass && !live.undoable;
  const { send } = logs;
  const { file } = live;
  useEffect(() => {
    if (over) file().then(send, () => undefined); // no storage: the shelf says so
  }, [over, file, send]);
  const awake = useAwake();
  const { sheet, set: setSheet, closed } = useSheet(view);
  const sizes = useMemo(() => typeSizes(settings.distanceM), [settings.distanceM]);
  useCalls(view, settings);
  const close = () => setSheet(null);
  const acts: Record<KeyAct, () => void> = {
    "hold-or-go-on": () => live.act(view.held ? "resume" : "hold"),
    next: () => live.act("next"),
    // With a sheet open there is nothing to go back to but the class.
    back: () => {
      if (sheet) close();
      else if (isFreshSkip(live.undoable, performance.now())) live.undo();
      else live.act("back");
    },
    extend: () => live.extend(settings.extendSeconds),
    "end-on-time": () => {
      if (sheet === "on-time") live.endOnTime(null);
      setSheet(sheet === "on-time" ? null : "on-time");
    },
    undo: live.undo,
    help: () => setSheet(sheet === "help" ? null : "help"),
  };
  useEscape(close);
  useFloorKeys(settings.keys, (act) => (view.phase !== "done" || act === "undo") && acts[act]());

  if (view.phase === "done") {
    return <DoneScreen card={card} live={live} owed={logsWords(logs)} onLeave={() => leave(onLeave)} />;
  }
  return (
    <div
      className={styles.live}
      data-own-keys
      data-phase={view.phase}
      data-held={view.held}
      data-sheet={sheet}
      style={{ "--seconds": `${sizes.seconds}px`, "--minutes": `${sizes.minutes}px` } as React.CSSProperties}
    >
      <div className={styles.rail} style={{ "--done": view.progress } as React.CSSProperties}>
        <span />
      </div>
      <header className={styles.top}>
        <span>
          {card.edition.title} · edition {card.edition.number} · {card.room.name}
          <LeaderStatus line={line} />
        </span>
        <span className={styles.figures}>
          {view.number > 0 ? `${view.number} of ${view.of} · ` : ""}
          {minutesSeconds(view.left)} left · {latenessWords(view.lateBy)}
        </span>
      </header>
      <div className={styles.notices}>
        {withdrawn && <Withdrawn of={withdrawn} />}
        <LeaderNotice line={line} lead={lead} onFollow={() => leave(onFollow)} />
        {(awake === "refused" || awake === "unknown-here") && view.phase === "opening" && (
          <p className={styles.aside}>The screen may go dark by itself here: touch it now and then.</p>
        )}
        {live.undoable?.did && (
          <p className={styles.did} role="status">
            {live.undoable.did}
          </p>
        )}
        {closed && (
          <p className={styles.did} role="status">
            {closed}
          </p>
        )}
        {live.sleptSeconds > 0 && <Slept seconds={live.sleptSeconds} onAnswer={live.answerSleep} />}
      </div>
      <section className={styles.now} aria-label="Now">
        <FitText className={styles.name} sizes={sizes.name} text={`${nameOf(view)} ${sheet ?? ""}`}>
          <Unbroken text={nameOf(view)} />
        </FitText>
        <Seconds view={view} />
      </section>
      <Doing view={view} equipment={card.plan.equipment} />
      <FitText className={styles.line} sizes={sizes.line} text={lineOf(view)}>
        <span data-now={view.line?.now ?? false}>{lineOf(view)}</span>
      </FitText>
      {sheet === "on-time" && <OnTimeSheet live={live} onClose={close} />}
      <Coming view={view} equipment={card.plan.equipment} />
      <Targets
        live={live}
        extendBy={settings.extendSeconds}
        onEndOnTime={() => setSheet(sheet === "on-time" ? null : "on-time")}
      />
      {sheet === "help" && (
        <section className={styles.help} role="dialog" aria-label="Keys and pedals">
          <h2>Keys and pedals</h2>
          <KeyTable chosen={settings.keys} />
          <button type="button" className="button" onClick={close}>
            Close
          </button>
        </section>
      )}
      <p className="visually-hidden" aria-live="polite">
        {nameOf(view)}
        {view.held ? ", held" : ""}
      </p>
    </div>
  );
}

/** Words with a hyphen stay whole: "single-leg" is never "single-" and "leg". */
function Unbroken({ text }: { text: string }) {
  return text.split(/(\S*-\S*)/).map((part, n) =>
    part.includes("-") ? (
      // biome-ignore lint/suspicious/noArrayIndexKey: pieces of one text have nothing but their place
      <span key={n} className={styles.whole}>
        {part}
      </span>
    ) : (
      part
    ),
  );
}

function nameOf(view: FloorView): string {
  if (view.item) return view.item.name;
  return view.phase === "closing" ? "Closing" : "Opening";
}

const lineOf = (view: FloorView): string => view.line?.text ?? "";

/** The seconds; counted aloud in the last ones, when the box turns inside out and says so. */
function Seconds({ view }: { view: FloorView }) {
  const counting = view.countIn !== null && !view.held;
  const figure = secondsFigure(view.secondsLeft);
  const words = view.held ? "held" : counting ? `count: ${countWord(view.countIn ?? 0)}` : unitWords(view);
  return (
    <div className={styles.seconds} data-counting={counting} data-held={view.held} role="timer" aria-live="off">
      <span className={styles.figure} data-long={figure.length > 2}>
        {figure}
      </span>
      <span className={styles.unit}>{words}</span>
    </div>
  );
}

function Withdrawn({ of }: { of: WithdrawnCard }) {
  const [read, setRead] = useState(false);
  if (read) return null;
  return (
    <p className={styles.slept} role="alert">
      {withdrawnWords(of)} This class runs on; end it if the reason concerns it.
      <button type="button" className="button" onClick={() => setRead(true)}>
        Read
      </button>
    </p>
  );
}

function Slept({ seconds, onAnswer }: { seconds: number; onAnswer(jump: boolean): void }) {
  const [figure] = useState(() => minutesSeconds(seconds));
  return (
    <p className={styles.slept} role="alert">
      The device slept for {figure}; the class stood still.
      <button type="button" className="button" onClick={() => onAnswer(false)}>
        Go on from here
      </button>
      <button type="button" className="button" onClick={() => onAnswer(true)}>
        Jump ahead {figure}
      </button>
    </p>
  );
}
