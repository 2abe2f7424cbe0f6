"use client";
/** The class as a whole: title, times, level, theme, cautions to expect, balance, talk, intensity, notes, items taken out. */
import type { ReactNode } from "react";
import { lateBodyMap } from "#app/_body-map/late-body-map.ts";
import { SideBars } from "#app/_parts/balance/side-bars.tsx";
import { UnevenList } from "#app/_parts/balance/uneven-list.tsx";
import { LatePart } from "#app/_parts/late-part.tsx";
import { SharedText } from "#app/_parts/shared-text.tsx";
import { TalkPart } from "#app/_rate/talk-part.tsx";
import { workShares } from "#lib/balance/balance.ts";
import { concernWords } from "#lib/cautions/concern.ts";
import { planParts } from "#lib/doc/layout.ts";
import { PLAN_DEFAULTS } from "#lib/plan/defaults.ts";
import { secondsWords, tagWords } from "#lib/plan/format.ts";
import { EXPECTED_CAUTIONS, GROUPS, LEVELS } from "#lib/plan/schema.ts";
import { MOST_PEOPLE } from "#lib/transitions/slowest.ts";
import { IntensitySection } from "../../_load/intensity-section.tsx";
import { ChoiceField } from "../../_parts/choice.tsx";
import { NumberField } from "../../_parts/number-field.tsx";
import styles from "../../_parts/panel.module.css";
import { putBack, setExpectedOn, setHeadField, setShare } from "../../_session/acts.ts";
import { CAUTION_NOTE, nameOf, TAKEN_OUT_LIST } from "../../_session/item-words.ts";
import type { PlanSession } from "../../_session/session.ts";
import type { SessionSnapshot } from "../../_session/session-types.ts";
import { CLASS_WORDS, peopleHint } from "./panel-words.ts";

interface ClassPanelProps {
  readonly session: PlanSession;
  readonly snap: SessionSnapshot;
  /** What was found and said about the class as a whole. */
  readonly slips: ReactNode;
}

/** Groups of muscles shown here at most; the whole class shows all of them. */
const BARS = 6;

export function ClassPanel({ session, snap, slips }: ClassPanelProps) {
  const readOnly = !session.canWrite;
  const own = { session, snap, readOnly };
  const { title, notes } = planParts(session.doc);
  return (
    <section className={styles.panel} aria-label={CLASS_WORDS.name}>
      <header className={styles.head}>
        <h2>{CLASS_WORDS.name}</h2>
      </header>
      {slips}
      <div className="field">
        <span aria-hidden="true">{CLASS_WORDS.title}</span>
        <SharedText host={session} text={title} readOnly={readOnly} label={CLASS_WORDS.title} maxLength={200} />
      </div>
      <Times {...own} />
      <Theme {...own} />
      <Expected {...own} />
      {Object.keys(snap.balance.groups).length > 0 && (
        <div className={styles.balance}>
          <h3>{CLASS_WORDS.balance}</h3>
          <LatePart
            part={lateBodyMap}
            props={{ shares: workShares(snap.balance), layout: "lying" }}
            meanwhile={<div className={styles.bodyPlace} />}
          />
          <UnevenList plan={snap.plan} balance={snap.balance} onGo={(id) => session.select(id)} />
          <SideBars plan={snap.plan} balance={snap.balance} most={BARS} />
        </div>
      )}
      <TalkPart {...own} />
      <IntensitySection plan={snap.plan} />
      <div className="field">
        <span aria-hidden="true">{CLASS_WORDS.notes}</span>
        <SharedText host={session} text={notes} readOnly={readOnly} label={CLASS_WORDS.notes} rows={5} />
      </div>
      <TakenOut {...own} />
    </section>
  );
}

interface PartProps extends Omit<ClassPanelProps, "slips"> {
  readonly readOnly: boolean;
}

function Times({ session, snap, readOnly }: PartProps) {
  const { plan } = snap;
  const second = (field: keyof typeof PLAN_DEFAULTS) => (
    <NumberField
      label={CLASS_WORDS[field]}
      unit="s"
      value={plan[field]}
      optional
      min={field === "gridSeconds" ? 1 : 0}
      max={field === "gridSeconds" ? 600 : 14400}
      placeholder={String(PLAN_DEFAULTS[field])}
      disabled={readOnly}
      onCommit={(value) => setHeadField(session, field, value)}
    />
  );
  return (
    <div className={styles.grid}>
      <NumberField
        label={CLASS_WORDS.length}
        clock
        value={plan.lengthSeconds}
        min={60}
        disabled={readOnly}
        onCommit={(value) => value !== undefined && setHeadField(session, "lengthSeconds", Math.round(value))}
      />
      {second("openingSeconds")}
      {second("closingSeconds")}
      {second("headsUpSeconds")}
      {second("countInSeconds")}
      {second("gridSeconds")}
      <People {...{ session, snap, readOnly }} />
    </div>
  );
}

/** How long a change takes depends on it: the class waits for its slowest. */
const People = ({ session, snap, readOnly }: PartProps) => (
  <NumberField
    label={CLASS_WORDS.people}
    value={snap.plan.people}
    optional
    min={1}
    max={MOST_PEOPLE}
    placeholder="1"
    hint={peopleHint(snap.plan)}
    disabled={readOnly}
    onCommit={(people) => setHeadField(session, "people", people === undefined ? undefined : Math.round(people))}
  />
);

const ANY = { value: "any", label: CLASS_WORDS.anyLevel } as const;

function Theme({ session, snap, readOnly }: PartProps) {
  const { theme, level } = snap.plan;
  const levels = [ANY, ...LEVELS.map((value) => ({ value, label: tagWords(value) }))];
  return (
    <>
      <ChoiceField
        label={CLASS_WORDS.level}
        value={level ?? "any"}
        options={levels}
        disabled={readOnly}
        onChoose={(value) => setHeadField(session, "level", value === "any" ? undefined : value)}
      />
      <div className="field">
        <span aria-hidden="true">{CLASS_WORDS.theme}</span>
        <SharedText
          host={session}
          text={planParts(session.doc).theme}
          readOnly={readOnly}
          label={CLASS_WORDS.theme}
          maxLength={120}
        />
      </div>
      {theme && <Shares session={session} theme={theme} readOnly={readOnly} />}
    </>
  );
}

interface SharesProps extends Pick<PartProps, "session" | "readOnly"> {
  readonly theme: NonNullable<SessionSnapshot["plan"]["theme"]>;
}

function Shares({ session, theme, readOnly }: SharesProps) {
  return (
    <details className={styles.more}>
      <summary>{CLASS_WORDS.shares}</summary>
      <div className={styles.grid}>
        {GROUPS.map((group) => (
          <NumberField
            key={group}
            label={tagWords(group)}
            unit="%"
            optional
            max={100}
            value={percentOf(theme.shares?.[group])}
            disabled={readOnly}
            onCommit={(percent) => setShare(session, group, percent === undefined ? undefined : percent / 100)}
          />
        ))}
      </div>
    </details>
  );
}

const percentOf = (share: number | undefined) => (share === undefined ? undefined : Math.round(share * 1000) / 10);

function Expected({ session, snap, readOnly }: PartProps) {
  const expected = snap.plan.expected ?? [];
  return (
    <details className={styles.more} open={expected.length > 0}>
      <summary>{expected.length > 0 ? `${CLASS_WORDS.cautions}: ${expected.length}` : CLASS_WORDS.cautions}</summary>
      <fieldset className={styles.ticks} disabled={readOnly}>
        <legend className="visually-hidden">{CLASS_WORDS.cautions}</legend>
        {EXPECTED_CAUTIONS.map((caution) => (
          <label key={caution} className="check">
            <input
              type="checkbox"
              checked={expected.includes(caution)}
              onChange={(event) => setExpectedOn(session, caution, event.target.checked)}
            />
            <span>
              {tagWords(caution)}
              {expected.includes(caution) && <span className={styles.concern}>{concernWords(snap.plan, caution)}</span>}
            </span>
          </label>
        ))}
      </fieldset>
      <p className="small quiet">{CAUTION_NOTE}</p>
    </details>
  );
}

function TakenOut({ session, snap, readOnly }: PartProps) {
  if (snap.deleted.length === 0) return null;
  return (
    <details className={styles.more}>
      <summary>{`${TAKEN_OUT_LIST}: ${snap.deleted.length}`}</summary>
      <ul className={styles.takenOut}>
        {snap.deleted.map(({ id, item }) => (
          <li key={id}>
            <span>
              {nameOf({ ...snap.plan, moves: { ...session.studio.moves, ...snap.plan.moves } }, item)}
              {item.kind !== "heading" && <span className="quiet"> {secondsWords(item.seconds)}</span>}
            </span>
            {!readOnly && (
              <button type="button" className="button" onClick={() => putBack(session, id)}>
                {CLASS_WORDS.putBack}
              </button>
            )}
          </li>
        ))}
      </ul>
    </details>
  );
}
