"use client";
/**
 * The read-aloud check: a passage read aloud between two taps gives the coach's own rate. Readings are taken together and
 * any can be left out; what the rate would change is shown before it is taken, as one step that can be undone.
 */
import { useRef, useState } from "react";
import { Sheet } from "#app/_fit/sheet.tsx";
import { setHeadField } from "#app/_plan/acts.ts";
import type { PlanSession } from "#app/_plan/session.ts";
import { useSnapshot } from "#app/_plan/use-session.ts";
import { plainNumber } from "#lib/plan/format.ts";
import { differMuch, ownRate, PASSAGE_WORDS, type RateReading, rateReading } from "#lib/talk/own-rate.ts";
import { PASSAGE } from "#lib/talk/passage.ts";
import { speechOf } from "#lib/talk/talk.ts";
import styles from "./rate.module.css";
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
  const [readings, setReadings] = useState<readonly GoodReading[]>([]);
  const [refused, setRefused] = useState<string | null>(null);
  const rate = ownRate(readings, pauseSeconds);
  const writes = session.canWrite;

  const read = (seconds: number) => {
    const reading = rateReading(seconds, pauseSeconds);
    setRefused(reading.ok ? null : reading.why);
    if (reading.ok) setReadings((before) => [...before, reading]);
  };
  const take = () => {
    if (rate === null || !writes) return;
    setHeadField(session, "speech.syllablesPerSecond", rate);
    session.say(`Talk is now counted at ${plainNumber(rate)} syllables a second.`);
    closer.current?.();
  };
  return (
    <Sheet
      title="Find your own rate"
      onClosed={onClosed}
      closer={closer}
      foot={
        <div className={styles.foot}>
          <p className="small quiet">
            {writes
              ? "The rate is kept with this plan, as one step that can be undone."
              : "This plan is not yours to write in: you can read, but nothing can be taken."}
          </p>
          {rate !== null && (
            <button type="button" className="button button-strong" disabled={!writes} onClick={take}>
              Take {plainNumber(rate)} syllables a second
            </button>
          )}
        </div>
      }
    >
      <p>
        Read these {PASSAGE_WORDS} words aloud as you would say them in class. Press the button, or the space bar, as
        you begin the first line, and again when the last is said.
      </p>
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
        <Readings
          readings={readings}
          pauseSeconds={pauseSeconds}
          apart={differMuch(readings)}
          onLeave={(at) => setReadings((before) => before.filter((_, i) => i !== at))}
        />
      )}
      {rate !== null && <WhatChanges plan={plan} rate={rate} />}
    </Sheet>
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
        {since !== null ? "I have read it all" : again ? "Read once more" : "I begin to read"}
      </button>
      {since !== null && (
        <button type="button" className="button" onClick={() => setSince(null)}>
          Stop, this one does not count
        </button>
      )}
    </div>
  );
}
