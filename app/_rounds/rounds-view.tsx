"use client";
/** Every round of reading of a plan, the newest first: who did what and when, its notes and main points, what was found then. */
import { keyHandler } from "#app/_parts/commands/keys.ts";
import { LocalTime } from "#app/_parts/local-time.tsx";
import { usePageActs } from "#app/_session/page-acts.tsx";
import { PLAN_COMMANDS } from "#app/_session/plan-commands.ts";
import type { PlanSession } from "#app/_session/session.ts";
import type { SessionSnapshot } from "#app/_session/session-types.ts";
import type { EarlierStep, MomentHead, RoundsView, RoundView } from "#lib/rounds/rounds.ts";
import { Between } from "./between.tsx";
import { MomentThen } from "./moment-then.tsx";
import { type RoundStep, roundSteps } from "./round-steps.ts";
import styles from "./rounds.module.css";
import { earlierWords, ROUNDS, roundTitle, stepTakenWords, thenWords } from "./rounds-words.ts";
import { useRounds } from "./use-rounds.ts";

interface RoundsProps {
  readonly session: PlanSession;
  readonly snap: SessionSnapshot;
}

export function RoundsViewPart({ session, snap }: RoundsProps) {
  const { run } = usePageActs();
  const { rounds, problem } = useRounds(session, snap.state);
  return (
    <section
      className={styles.view}
      aria-labelledby="rounds-title"
      data-rounds
      onKeyDown={keyHandler(PLAN_COMMANDS, "rounds", { run })}
    >
      <h2 id="rounds-title" tabIndex={-1}>
        {ROUNDS.title}
      </h2>
      {problem !== null && <p className="problem">{problem}</p>}
      {rounds ? <All {...{ session, snap, rounds }} /> : problem === null && <p role="status">{ROUNDS.loading}</p>}
    </section>
  );
}

function All({ session, snap, rounds: all }: RoundsProps & { readonly rounds: RoundsView }) {
  const { rounds, besides, earlier, points, usual } = all;
  return (
    <>
      {points.length > 0 && <Between {...{ session, snap, points, usual }} />}
      {rounds.length + earlier.length === 0 && <p>{ROUNDS.none}</p>}
      {rounds
        .map((round, i) => ({ round, steps: roundSteps(round, rounds[i + 1]?.offeredAt ?? null, snap) }))
        .reverse()
        .map((of) => (
          <Round key={of.round.number} session={session} {...of} />
        ))}
      {besides.length > 0 && (
        <section className={styles.round} aria-label={ROUNDS.besides}>
          <h3>{ROUNDS.besides}</h3>
          <Steps session={session} steps={besides.map((moment) => ({ kind: "moment", at: moment.at, moment }))} />
        </section>
      )}
      {earlier.length > 0 && <Earlier steps={earlier} />}
    </>
  );
}

interface RoundProps {
  readonly session: PlanSession;
  readonly round: RoundView;
  readonly steps: readonly RoundStep[];
}

function Round({ session, round, steps }: RoundProps) {
  const { number, mainPoints } = round;
  return (
    <section className={styles.round} aria-labelledby={`round-${number}`}>
      <h3 id={`round-${number}`}>{roundTitle(round)}</h3>
      {mainPoints.length > 0 && (
        <>
          <h4>{ROUNDS.mainPoints}</h4>
          <ol className={styles.points}>
            {mainPoints.map((point) => (
              <li key={point}>{point}</li>
            ))}
          </ol>
        </>
      )}
      <Steps session={session} steps={steps} />
    </section>
  );
}

function Steps({ session, steps }: Pick<RoundProps, "session" | "steps">) {
  return (
    <ol className={styles.steps}>
      {steps.map((step) =>
        step.kind === "moment" ? (
          <li key={step.moment.id}>
            <Moment session={session} moment={step.moment} />
          </li>
        ) : (
          <li key={`${step.at} ${step.words}`}>
            <p>
              <b>{step.words}</b>, <LocalTime at={step.at} />
            </p>
          </li>
        ),
      )}
    </ol>
  );
}

function Moment({ session, moment }: { readonly session: PlanSession; readonly moment: MomentHead }) {
  return (
    <>
      <p>
        <b>{stepTakenWords(moment)}</b>, <LocalTime at={moment.at} />
      </p>
      {moment.note && <p className={styles.note}>{moment.note}</p>}
      <p className="small quiet">{moment.hasText ? thenWords(moment) : ROUNDS.textMissing}</p>
      {moment.hasText && <MomentThen session={session} moment={moment} />}
    </>
  );
}

function Earlier({ steps }: { readonly steps: readonly EarlierStep[] }) {
  return (
    <section className={styles.round} aria-label={ROUNDS.earlier}>
      <h3>{ROUNDS.earlier}</h3>
      <ol className={styles.steps}>
        {steps.map((step, i) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: they are only ever added to
          <li key={i}>
            <p>
              <b>{earlierWords(step)}</b>, <LocalTime at={step.at} />
            </p>
            {step.note && <p className={styles.note}>{step.note}</p>}
          </li>
        ))}
      </ol>
    </section>
  );
}
