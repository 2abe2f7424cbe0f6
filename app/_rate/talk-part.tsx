"use client";
/** The class's talk on its panel: how much there is, what the figure means, the rate it is counted with, the way to one's own. */
import { useId, useState } from "react";
import { LatePart } from "#app/_parts/late-part.tsx";
import { NumberField } from "#app/_parts/number-field.tsx";
import { setHeadField } from "#app/_session/acts.ts";
import type { PlanSession } from "#app/_session/session.ts";
import type { SessionSnapshot } from "#app/_session/session-types.ts";
import { talkPercent } from "#lib/cues/class-talk.ts";
import { SPEECH_DEFAULTS } from "#lib/talk/talk.ts";
import { lateReadAloud } from "./late-read-aloud.ts";
import styles from "./rate.module.css";
import { TALK_PART } from "./talk-part-id.ts";
import { classTalkWords, WHAT_THE_RATE_IS } from "./talk-words.ts";

interface TalkPartProps {
  readonly session: PlanSession;
  readonly snap: SessionSnapshot;
  readonly readOnly: boolean;
}

export function TalkPart({ session, snap, readOnly }: TalkPartProps) {
  const [open, setOpen] = useState(false);
  const title = useId();
  const { classTalk } = snap;
  return (
    <section className={styles.part} aria-labelledby={title}>
      <div id={TALK_PART} tabIndex={-1} className={styles.meaning}>
        <h3 id={title}>Talk</h3>
        <p>
          <b>{talkPercent(classTalk)}</b>
          {classTalkWords(classTalk)}
        </p>
        <p className="small quiet">{WHAT_THE_RATE_IS}</p>
      </div>
      <SpeechFields session={session} snap={snap} readOnly={readOnly} />
      <button type="button" className="button" onClick={() => setOpen(true)}>
        Read aloud to find your rate
      </button>
      {open && <LatePart part={lateReadAloud} props={{ session, onClosed: () => setOpen(false) }} />}
    </section>
  );
}

function SpeechFields({ session, snap: { plan }, readOnly }: TalkPartProps) {
  return (
    <div className={styles.fields}>
      <NumberField
        label="Rate, syllables a second"
        value={plan.speech?.syllablesPerSecond}
        optional
        min={0.5}
        max={15}
        placeholder={String(SPEECH_DEFAULTS.syllablesPerSecond)}
        disabled={readOnly}
        onCommit={(value) => setHeadField(session, "speech.syllablesPerSecond", value)}
      />
      <NumberField
        label="Pause after a line"
        unit="s"
        value={plan.speech?.pauseSeconds}
        optional
        max={10}
        placeholder={String(SPEECH_DEFAULTS.pauseSeconds)}
        disabled={readOnly}
        onCommit={(value) => setHeadField(session, "speech.pauseSeconds", value)}
      />
    </div>
  );
}
