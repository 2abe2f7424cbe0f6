"use client";
/** The class on the coach's screen: one thing at a time, read from across the room by somebody who moves. */
import { useEffect, useMemo } from "react";
import type { Card, CardEnvelope } from "#lib/card/schema.ts";
import type { WithdrawnCard } from "#lib/floor/keep-cards.ts";
import type { KeyAct } from "#lib/floor/keys.ts";
import { typeSizes } from "#lib/floor/legibility.ts";
import { LATE_SECONDS, secondsFigure, unitWords } from "#lib/floor/time-words.ts";
import { isFreshSkip } from "#lib/floor/undo.ts";
import type { FloorItem, FloorView } from "#lib/floor/view.ts";
import { countWord } from "#lib/plan/format.ts";
import type { Plan } from "#lib/plan/schema.ts";
import { ChangePlate, changedInto } from "../_change/change-plate.tsx";
import { COMING_UP } from "../_change/change-words.ts";
import { ComingPlate } from "../_change/coming-plate.tsx";
import { LeaderNotice } from "../_line/leader-notice.tsx";
import { LeaderStatus } from "../_line/leader-status.tsx";
import { useLead } from "../_line/use-lead.ts";
import type { FloorLine } from "../_line/use-line.ts";
import { useAwake } from "../_parts/awake.ts";
import { useCalls } from "../_parts/calls.ts";
import { Coming } from "../_parts/coming.tsx";
import { Doing } from "../_parts/doing.tsx";
import { FitText } from "../_parts/fit-text.tsx";
import { KEYS_AND_PEDALS, logsWords, nowWords } from "../_parts/floor-words.ts";
import type { KeptClass } from "../_parts/kept.ts";
import { KeyTable } from "../_parts/key-table.tsx";
import { useEscape, useFloorKeys } from "../_parts/keys.ts";
import { type RunningClass, useClass } from "../_parts/use-class.ts";
import type { ClassLogs } from "../_parts/use-class-logs.ts";
import type { Settings } from "../_parts/use-settings.ts";
import { ClassNotices } from "./class-notices.tsx";
import { progressWords } from "./class-words.ts";
import { DoneScreen } from "./done-screen.tsx";
import styles from "./live-class.module.css";
import { OnTimeSheet } from "./on-time-sheet.tsx";
import { Targets } from "./targets.tsx";
import { type OpenSheet, useSheet } from "./use-sheet.ts";
import { useWithdrawal } from "./use-withdrawal.ts";
import { WithdrawnSheet } from "./withdrawn-sheet.tsx";

interface Props {
  readonly card: Card;
  readonly envelope: CardEnvelope;
  readonly running: KeptClass | null;
  /** Set when its edition was withdrawn meanwhile: the coach is asked, the class is not stopped. */
  readonly withdrawn: WithdrawnCard | undefined;
  readonly settings: Settings;
  readonly line: FloorLine;
  /** The logs that wait for the studio: a class that is over is filed at once, whether or not somebody touches the screen. */
  readonly logs: ClassLogs;
  /** Another screen goes on with the class; this one follows it. */
  onFollow(): void;
  onLeave(): void;
}

export function LiveClass({ card, envelope, running, withdrawn, settings, line, logs, onFollow, onLeave }: Props) {
  const live = useClass(card, envelope, running);
  // A class that another screen leads to its end is filed by that screen.
  const leave = (then: () => void) => live.leave(!lead.sameClass).finally(then);
  const lead = useLead(line, card, live, () => leave(onFollow));
  const { view } = live;
  const into = changedInto(view);
  useFiledAtEnd(live, lead.sameClass, logs);
  const awake = useAwake();
  const sheets = useSheet(view);
  const { open, answer } = useWithdrawal(sheets, withdrawn, view);
  const sizes = useMemo(() => typeSizes(settings.distanceM), [settings.distanceM]);
  useCalls(view, settings);
  useClassKeys(live, sheets, settings);

  if (view.phase === "done") {
    return <DoneScreen card={card} live={live} owed={logsWords(logs)} onLeave={() => leave(onLeave)} />;
  }
  return (
    <div
      className={styles.live}
      data-own-keys
      data-phase={view.phase}
      data-held={view.held}
      data-sheet={open.sheet}
      data-plate={into ? "change" : comingUp(view, open.sheet) ? "coming" : undefined}
      style={{ "--seconds": `${sizes.seconds}px`, "--minutes": `${sizes.minutes}px` } as React.CSSProperties}
    >
      <Top card={card} view={view} line={line} />
      <ClassNotices {...{ live, awake }} closed={open.closed} asked={open.sheet === "withdrawn"}>
        <LeaderNotice line={line} lead={lead} onFollow={() => leave(onFollow)} />
      </ClassNotices>
      <Present {...{ view, into, settings, sizes }} sheet={open.sheet} plan={card.plan} />
      <Below {...{ card, live, open, settings, withdrawn }} onAnswer={answer} />
      <NowAloud view={view} />
    </div>
  );
}

/** For who listens. */
const NowAloud = ({ view }: { readonly view: FloorView }) => (
  <p className="visually-hidden" aria-live="polite">
    {nowWords(view)}
    {view.held ? ", held" : ""}
  </p>
);

/** Files the log as soon as the class is over, but not while the end may still be undone as a slip. */
function useFiledAtEnd({ view, undoable, file }: RunningClass, ledElsewhere: boolean, { send }: ClassLogs): void {
  const over = view.phase === "done" && !ledElsewhere && !undoable;
  useEffect(() => {
    if (over) file().then(send, () => undefined); // no storage: the shelf says so
  }, [over, file, send]);
}

function useClassKeys(live: RunningClass, { sheet, set }: OpenSheet, { keys, extendSeconds }: Settings): void {
  const { view } = live;
  const close = () => set(null);
  const acts: Record<KeyAct, () => void> = {
    "hold-or-go-on": () => live.act(view.held ? "resume" : "hold"),
    next: () => live.act("next"),
    // With a sheet open, back goes to the class.
    back: () => {
      if (sheet) close();
      else if (isFreshSkip(live.undoable, performance.now())) live.undo();
      else live.act("back");
    },
    extend: () => live.extend(extendSeconds),
    "end-on-time": () => {
      if (sheet === "on-time") live.endOnTime(null);
      set(sheet === "on-time" ? null : "on-time");
    },
    undo: live.undo,
    help: () => set(sheet === "help" ? null : "help"),
  };
  useEscape(close);
  useFloorKeys(keys, (act) => (view.phase !== "done" || act === "undo") && acts[act]());
}

function Top({ card, view, line }: { readonly card: Card; readonly view: FloorView; readonly line: FloorLine }) {
  return (
    <>
      <div className={styles.rail} style={{ "--done": view.progress } as React.CSSProperties}>
        <span />
      </div>
      <header className={styles.top}>
        <span>
          {card.edition.title} · edition {card.edition.number} · {card.room.name}
          <LeaderStatus line={line} />
        </span>
        <span className={styles.figures} data-late={view.lateBy >= LATE_SECONDS}>
          {progressWords(view)}
        </span>
      </header>
    </>
  );
}

/** The move whose change is announced, on a plate of its own: not beside an open sheet, which takes its room. */
const comingUp = ({ headsUp, next }: FloorView, sheet: OpenSheet["sheet"]): FloorItem | null =>
  headsUp && next?.nowOn && sheet !== "on-time" ? next : null;

interface PresentProps extends NowProps {
  /** What is changed into; null outside a change. */
  readonly into: FloorItem | null;
  readonly settings: Settings;
}

/** The move; in a change its plate, and under it, on the ground of work, the line to say. */
function Present({ into, settings: { distanceM }, ...now }: PresentProps) {
  if (!into) return <Now {...now} />;
  const { view, sheet, sizes, plan } = now;
  return (
    <>
      <ChangePlate item={into} {...{ view, plan, distanceM }} beside={sheet} />
      <Line view={view} sizes={sizes.aside} />
    </>
  );
}

function Line({ view, sizes }: { readonly view: FloorView; readonly sizes: readonly number[] }) {
  return (
    <FitText className={styles.line} sizes={sizes} text={lineOf(view)}>
      <span data-now={view.line?.now ?? false}>{lineOf(view)}</span>
    </FitText>
  );
}

interface NowProps {
  readonly view: FloorView;
  readonly sheet: OpenSheet["sheet"];
  readonly sizes: ReturnType<typeof typeSizes>;
  readonly plan: Plan;
}

/** The move with its seconds, how it is set up, and the line to say. */
function Now({ view, sheet, sizes, plan }: NowProps) {
  return (
    <>
      <section className={styles.now} aria-label="Now">
        <FitText className={styles.name} sizes={sizes.name} text={`${nowWords(view)} ${sheet ?? ""}`}>
          <Unbroken text={nowWords(view)} />
        </FitText>
        <Seconds view={view} />
      </section>
      <Doing view={view} equipment={plan.equipment} />
      <Line view={view} sizes={comingUp(view, sheet) ? sizes.aside : sizes.line} />
    </>
  );
}

interface BelowProps {
  readonly card: Card;
  readonly live: RunningClass;
  readonly open: OpenSheet;
  readonly settings: Settings;
  readonly withdrawn: WithdrawnCard | undefined;
  /** The coach has decided about a withdrawn edition. */
  onAnswer(): void;
}

/** The open sheet, what comes next, and the targets. */
function Below({ card, live, open: { sheet, set }, settings, withdrawn, onAnswer }: BelowProps) {
  const close = () => set(null);
  const { equipment } = card.plan;
  const { distanceM } = settings;
  const next = comingUp(live.view, sheet);
  return (
    <>
      {sheet === "on-time" && <OnTimeSheet live={live} onClose={close} />}
      {sheet === "withdrawn" && withdrawn && <WithdrawnSheet of={withdrawn} live={live} onAnswer={onAnswer} />}
      {next ? (
        <ComingPlate item={next} equipment={equipment} distanceM={distanceM} label={COMING_UP} />
      ) : (
        !changedInto(live.view) && <Coming view={live.view} equipment={equipment} />
      )}
      <Targets
        live={live}
        extendBy={settings.extendSeconds}
        onEndOnTime={() => set(sheet === "on-time" ? null : "on-time")}
      />
      {sheet === "help" && (
        <section className={styles.help} role="dialog" aria-label={KEYS_AND_PEDALS}>
          <h2>{KEYS_AND_PEDALS}</h2>
          <KeyTable chosen={settings.keys} />
          <button type="button" className="button" onClick={close}>
            Close
          </button>
        </section>
      )}
    </>
  );
}

/** Words with a hyphen stay on one line: "single-leg" is never "single-" and "leg". */
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

const lineOf = (view: FloorView): string => view.line?.text ?? "";

/** The seconds; in the last ones, which are counted aloud, the box is inverted and says so. */
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
