/** For cameras and sound: the crew's own lines and when they are due, who speaks and for how long, the next change. */

import { minutesSeconds } from "#lib/floor/words.ts";
import { type CrewSheet, crewSheet } from "#lib/line/crew.ts";
import { titled } from "../_parts/coming.tsx";
import { Figure } from "./figure.tsx";
import styles from "./follow.module.css";
import { nowWords, type ViewProps } from "./view-props.ts";

export function CrewView({ view, now, position }: ViewProps) {
  const sheet = crewSheet(now, position);
  return (
    <div className={styles.crew}>
      <section className={styles.part} aria-label="Now">
        <div className={styles.head}>
          <h1>{nowWords(view)}</h1>
          <Figure view={view} />
        </div>
        <p className={styles.voice} data-speaks={sheet.voice.speaks}>
          {voiceWords(sheet.voice)}
        </p>
        <p className={styles.spoken}>{view.line?.now ? view.line.text : ""}</p>
        <h2>Crew now</h2>
        {sheet.now.length === 0 && <p className={styles.quiet}>Nothing for the crew here.</p>}
        {sheet.now.map(({ text }) => (
          <p key={text} className={styles.note}>
            {text}
          </p>
        ))}
      </section>
      <section className={styles.part} aria-label="Next" data-near={view.headsUp}>
        <p className={styles.label}>{view.headsUp ? "coming up" : "next change"}</p>
        <h2>
          {view.next ? titled(view.next) : "Nothing more"}{" "}
          {sheet.changeIn !== null && <span className={styles.figures}>in {inWords(sheet.changeIn)}</span>}
        </h2>
        <h3>Crew lines to come</h3>
        {sheet.next.length === 0 && <p className={styles.quiet}>No more of them.</p>}
        <ol className={styles.lines}>
          {sheet.next.map(({ item, text, name, inSeconds }) => (
            <li key={`${item} ${text}`}>
              <span className={styles.figures}>{inWords(inSeconds)}</span>
              <span>
                <strong>{name}</strong> {text}
              </span>
            </li>
          ))}
        </ol>
      </section>
    </div>
  );
}

const inWords = (seconds: number): string => (seconds < 60 ? `${Math.ceil(seconds)} s` : minutesSeconds(seconds));

function voiceWords({ speaks, seconds }: CrewSheet["voice"]): string {
  if (seconds === null) return "The coach says nothing more.";
  const figure = inWords(Math.max(0, seconds));
  return speaks ? `The coach speaks: ${figure} more` : `Quiet for ${figure}`;
}
