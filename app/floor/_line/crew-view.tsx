/** For cameras and sound: the crew's lines and when they are due, who speaks, the next change; above them, the change. */
import { secondsFigure } from "#lib/floor/time-words.ts";
import { type CrewCalls, crewSheet } from "#lib/line/crew.ts";
import { ChangePlate, changedInto } from "../_change/change-plate.tsx";
import { titled } from "../_parts/coming.tsx";
import { Fitted } from "../_parts/fitted.tsx";
import { nowWords } from "../_parts/floor-words.ts";
import { Acts } from "./acts.tsx";
import { Figure } from "./figure.tsx";
import styles from "./follow.module.css";
import { CREW_GIVES, inWords, NO_CREW_LINE, NO_MORE_CREW_LINES, voiceWords } from "./screens-words.ts";
import type { ViewProps } from "./view-props.ts";

export function CrewView(props: ViewProps) {
  const { view, card, distanceM, unsure } = props;
  const into = changedInto(view);
  return (
    <>
      {into && (
        <div className={styles.over}>
          <ChangePlate view={view} item={into} plan={card.plan} {...{ distanceM, unsure }} />
        </div>
      )}
      <Calls {...props} />
    </>
  );
}

function Calls(props: ViewProps) {
  const { view, now, position, distanceM, unsure } = props;
  const sheet = crewSheet(now, position);
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
      gives={CREW_GIVES}
      sizes={(width, height) => ({
        main: Math.min(150, height * 0.2, width * 0.1),
        figure: Math.min(height * 0.3, width * 0.14),
      })}
    >
      <Present {...props} sheet={sheet} />
      <Ahead {...props} sheet={sheet} />
    </Fitted>
  );
}

interface PartProps extends ViewProps {
  readonly sheet: CrewCalls;
}

/** The move with its seconds, who speaks, and the crew's lines for it. */
function Present({ view, unsure, sheet }: PartProps) {
  return (
    <section className={styles.part} aria-label="Calls">
      {!changedInto(view) && (
        <div className={styles.head}>
          <h1 data-fit>{nowWords(view)}</h1>
          <Figure view={view} unsure={unsure} />
        </div>
      )}
      <p className={styles.voice} data-speaks={sheet.voice.speaks} data-fit>
        {voiceWords(sheet.voice)}
      </p>
      <p className={styles.spoken} data-gives="1">
        {view.line?.now ? view.line.text : ""}
      </p>
      <h2 className={styles.label}>Crew now</h2>
      {sheet.now.length === 0 && <p className={styles.quiet}>{NO_CREW_LINE}</p>}
      {sheet.now.map(({ text }) => (
        <p key={text} className={styles.note} data-fit>
          {text}
        </p>
      ))}
    </section>
  );
}

/** The next change, unless it is now and has the plate, and the crew's lines to come. */
function Ahead({ view, card, unsure, sheet }: PartProps) {
  const { next } = view;
  return (
    <section className={styles.part} aria-label="Next" data-near={view.headsUp}>
      {!changedInto(view) && (
        <>
          <p className={styles.label}>{view.headsUp ? "coming up" : "next change"}</p>
          <h2 data-fit>
            {next ? titled(next) : "Nothing more"}{" "}
            {sheet.changeIn !== null && <span className={styles.figures}>in {inWords(sheet.changeIn)}</span>}
          </h2>
          <div data-gives="3">{next && <Acts item={next} equipment={card.plan.equipment} unsure={unsure} />}</div>
        </>
      )}
      <h3>Crew lines to come</h3>
      {sheet.next.length === 0 && <p className={styles.quiet}>{NO_MORE_CREW_LINES}</p>}
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
  );
}
