/** For cameras and sound: the crew's own lines and when they are due, who speaks and for how long, the next change. */
import { minutesSeconds, secondsFigure } from "#lib/floor/time-words.ts";
import { type CrewCalls, crewSheet } from "#lib/line/crew.ts";
import { titled } from "../_parts/coming.tsx";
import { Fitted } from "../_parts/fitted.tsx";
import { Acts } from "./acts.tsx";
import { Figure } from "./figure.tsx";
import styles from "./follow.module.css";
import { nowWords, type ViewProps } from "./view-props.ts";

/** What a camera desk can do without, the first to go first. */
const GIVES = ["what is being said", "later crew lines", "the acts of the next change"];

export function CrewView({ view, card, now, position, distanceM, unsure }: ViewProps) {
  const sheet = crewSheet(now, position);
  const changing = view.phase === "change";
  const to = changing ? view.item : view.next;
  const figure = secondsFigure(view.secondsLeft);
  const lines = [...sheet.now, ...sheet.next].map(({ text }) => text);
  const shown = [
    view.phase,
    nowWords(view),
    view.line?.text,
    view.next?.id,
    figure.length,
    lines,
    unsure,
    view.held,
    sheet.voice.speaks,
  ];
  return (
    <Fitted
      className={styles.crew}
      distanceM={distanceM}
      text={shown.join("|")}
      gives={GIVES}
      sizes={(width, height) => ({
        main: Math.min(150, height * 0.2, width * 0.1),
        figure: Math.min(height * 0.3, width * 0.14),
      })}
    >
      <section className={styles.part} aria-label="Now">
        <div className={styles.head}>
          <h1 data-fit>{nowWords(view)}</h1>
          <Figure view={view} unsure={unsure} />
        </div>
        <p className={styles.voice} data-speaks={sheet.voice.speaks} data-fit>
          {voiceWords(sheet.voice)}
        </p>
        <p className={styles.spoken} data-gives="1">
          {view.line?.now ? view.line.text : ""}
        </p>
        <h2 className={styles.label}>Crew now</h2>
        {sheet.now.length === 0 && <p className={styles.quiet}>Nothing for the crew here.</p>}
        {sheet.now.map(({ text }) => (
          <p key={text} className={styles.note} data-fit>
            {text}
          </p>
        ))}
      </section>
      <section className={styles.part} aria-label="Next" data-near={view.headsUp || changing}>
        <p className={styles.label}>{changing ? "changing to" : view.headsUp ? "coming up" : "next change"}</p>
        <h2 data-fit>
          {to ? titled(to) : "Nothing more"}{" "}
          {sheet.changeIn !== null && !changing && <span className={styles.figures}>in {inWords(sheet.changeIn)}</span>}
        </h2>
        <div data-gives="3">
          {to && <Acts item={to} equipment={card.plan.equipment} large={false} unsure={unsure} />}
        </div>
        <h3>Crew lines to come</h3>
        {sheet.next.length === 0 && <p className={styles.quiet}>No more of them.</p>}
        <ol className={styles.lines}>
          {sheet.next.map(({ item, text, name, inSeconds }, n) => (
            <li key={`${item} ${text}`} data-gives={n > 0 ? "2" : undefined} data-fit>
              <span className={styles.figures}>{inWords(inSeconds)}</span>
              <span>
                <strong>{name}</strong> {text}
              </span>
            </li>
          ))}
        </ol>
      </section>
    </Fitted>
  );
}

const inWords = (seconds: number): string => (seconds < 60 ? `${Math.ceil(seconds)} s` : minutesSeconds(seconds));

function voiceWords({ speaks, seconds }: CrewCalls["voice"]): string {
  if (seconds === null) return "The coach says nothing more.";
  const figure = inWords(Math.max(0, seconds));
  return speaks ? `The coach speaks: ${figure} more` : `Quiet for ${figure}`;
}
