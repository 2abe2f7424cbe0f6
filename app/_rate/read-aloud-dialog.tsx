"use client";
/**
 * The read-aloud check: a passage read aloud between two taps gives the coach's own rate. Readings count together and any
 * can be left out; what the rate would change is shown before it is taken.
 */
import { useRef, useState } from "react";
import { Dialog } from "#app/_parts/dialog.tsx";
import { setHeadField } from "#app/_session/acts.ts";
import { LOOK_ONLY, TAKEN_IN_ONE_STEP } from "#app/_session/previews.ts";
import type { PlanSession } from "#app/_session/session.ts";
import { useSnapshot } from "#app/_session/use-session.ts";
import { differMuch, ownRate, PASSAGE_WORDS, type RateReading, rateReading } from "#lib/talk/own-rate.ts";
import { PASSAGE } from "#lib/talk/passage.ts";
import { speechOf } from "#lib/talk/talk.ts";
import styles from "./rate.module.css";
import { howToReadAloudWords, takenRateWords, takeRateWords } from "./rate-words.ts";
import { Readings } from "./readings.tsx";
import { WhatChanges } from "./what-changes.tsx";

interface ReadAloudProps {
  readonly session: PlanSession;
  readonly onClosed: () => void;
}
type GoodReading = Extract<RateReading, { ok: true }>;

export function ReadAloudDialog({ session, onClosed }: ReadAloudProps) {
  const { plan } = useSnapshot(session);
  const { pauseSeconds } = speechOf(plan);
  const closer = useRef<(() => void) | null>(null);
  const { readings, refused, read, leaveOut } = useReadings(pauseSeconds);
  const rate = ownRate(readings, pauseSeconds);
  const take = () => {
    if (rate === null || !session.canWrite) return;
    setHeadField(session, "speech.syllablesPerSecond", rate);
    session.say(takenRateWords(rate));
    closer.current?.();
  };
  return (
    <Dialog
      title="Find your own rate"
      size="sheet"
      onClose={onClosed}
      closer={closer}
      foot={<Foot writes={session.canWrite} rate={rate} onTake={take} />}
    >
      <p>{howToReadAloudWords(PASSAGE_WORDS)}</p>
      <Taps onRead={read} again={readings.length > 0} />
      <p className={refused === null ? "visually-hidden" : "notice"} role="alert">
        {refused}
      </p>
      <ol className={styles.passage}>
        {PASSAGE.map((line) => (
          <li key={line}>{line}</li>
        ))}
      </ol>
      {readings.length > 0 && (
        <Readings readings={readings} pauseSeconds={pauseSeconds} apart={differMuch(readings)} onLeave={leaveOut} />
      )}
      {rate !== null && <WhatChanges plan={plan} rate={rate} />}
    </Dialog>
  );
}

/** The good readings of this sitting, and why the last one was refused. */
function useReadings(pauseSeconds: number) {
  const [readings, setReadings] = useState<readonly GoodReading[]>([]);
  const [refused, setRefused] = useState<string | null>(null);
  return {
    readings,
    refused,
    read: (seconds: number) => {
      const reading = rateReading(seconds, pauseSeconds);
      setRefused(reading.ok ? null : reading.why);
      if (reading.ok) setReadings((before) => [...before, reading]);
    },
    leaveOut: (at: number) => setReadings((before) => before.filter((_, i) => i !== at)),
  };
}

interface FootProps {
  readonly writes: boolean;
  readonly rate: number | null;
  readonly onTake: () => void;
}

function Foot({ writes, rate, onTake }: FootProps) {
  return (
    <div className="spread">
      <p className="small quiet">{writes ? TAKEN_IN_ONE_STEP : LOOK_ONLY}</p>
      {rate !== null && (
        <button type="button" className="button button-strong" disabled={!writes} onClick={onTake}>
          {takeRateWords(rate)}
        </button>
      )}
    </div>
  );
}

/** One button for both taps: the hand stays where it is. */
function Taps({ onRead, again }: { onRead: (seconds: number) => void; again: boolean }) {
  const [since, setSince] = useState<number | null>(null);
  const tap = () => {
    const now = performance.now();
    if (since === null) return setSince(now);
    setSince(null);
    onRead((now - since) / 1000);
  };
  return (
    <div className={styles.taps}>
      <button type="button" data-first className={`button button-strong ${styles.tap}`} onClick={tap}>
        {since !== null ? "I have finished" : again ? "Read again" : "Start reading"}
      </button>
      {since !== null && (
        <button type="button" className="button" onClick={() => setSince(null)}>
          Stop without counting this one
        </button>
      )}
    </div>
  );
}
