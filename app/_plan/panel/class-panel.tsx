"use client";
/** The class as a whole: title, length, theme, who is expected, opening and closing, notes, and what was taken out. */
import { SideBars } from "#app/_balance/side-bars.tsx";
import { UnevenList } from "#app/_balance/uneven-list.tsx";
import { TalkPart } from "#app/_rate/talk-part.tsx";
import { SharedText } from "#app/_shell/shared-text.tsx";
import { concernWords } from "#lib/cautions/concern.ts";
import { planParts } from "#lib/doc/layout.ts";
import { PLAN_DEFAULTS } from "#lib/plan/defaults.ts";
import { secondsWords, tagWords } from "#lib/plan/format.ts";
import { EXPECTED_CAUTIONS, GROUPS, LEVELS } from "#lib/plan/schema.ts";
import { putBack, setExpectedOn, setHeadField, setShare } from "../acts.ts";
import { Choice } from "../fields/choice.tsx";
import { NumberField } from "../fields/number-field.tsx";
import { IntensityPart } from "../load/intensity-part.tsx";
import type { PlanSession } from "../session.ts";
import type { SessionSnapshot } from "../session-types.ts";
import { CAUTION_NOTE, nameOf } from "../words.ts";
import styles from "./panel.module.css";

interface ClassPanelProps {
  readonly session: PlanSession;
  readonly snap: SessionSnapshot;
}

/** Groups shown here; the whole class shows all of them. */
const BARS = 6;

export function ClassPanel({ session, snap }: ClassPanelProps) {
  const readOnly = !session.canWrite;
  const own = { session, snap, readOnly };
  const { title, notes } = planParts(session.doc);
  return (
    <section className={styles.panel} aria-label="The class">
      <header className={styles.head}>
        <h2>The class</h2>
      </header>
      <div className="field">
        <span aria-hidden="true">Title</span>
        <SharedText host={session} text={title} readOnly={readOnly} label="Title" maxLength={200} />
      </div>
      <Times {...own} />
      <Theme {...own} />
      <Expected {...own} />
      {Object.keys(snap.balance.groups).length > 0 && (
        <div className={styles.balance}>
          <h3>Left against right</h3>
          <UnevenList plan={snap.plan} balance={snap.balance} onGo={(id) => session.select(id)} />
          <SideBars plan={snap.plan} balance={snap.balance} most={BARS} />
        </div>
      )}
      <TalkPart {...own} />
      <IntensityPart plan={snap.plan} />
      <div className="field">
        <span aria-hidden="true">Notes of the authors</span>
        <SharedText host={session} text={notes} readOnly={readOnly} label="Notes of the authors" rows={5} />
      </div>
      <TakenOut {...own} />
    </section>
  );
}

interface PartProps extends ClassPanelProps {
  readonly readOnly: boolean;
}

function Times({ session, snap, readOnly }: PartProps) {
  const { plan } = snap;
  const second = (label: string, field: keyof typeof PLAN_DEFAULTS) => (
    <NumberField
      label={label}
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
        label="Length, minutes"
        clock
        value={plan.lengthSeconds}
        min={60}
        disabled={readOnly}
        onCommit={(value) => value !== undefined && setHeadField(session, "lengthSeconds", Math.round(value))}
      />
      {second("Opening", "openingSeconds")}
      {second("Closing", "closingSeconds")}
      {second("Heads-up before a change", "headsUpSeconds")}
      {second("Count-in", "countInSeconds")}
      {second("Time grid", "gridSeconds")}
    </div>
  );
}

const ANY = { value: "any", label: "not said" } as const;

function Theme({ session, snap, readOnly }: PartProps) {
  const { theme, level } = snap.plan;
  const levels = [ANY, ...LEVELS.map((value) => ({ value, label: tagWords(value) }))];
  return (
    <>
      <Choice
        label="Level"
        value={level ?? "any"}
        options={levels}
        disabled={readOnly}
        onChoose={(value) => setHeadField(session, "level", value === "any" ? undefined : value)}
      />
      <div className="field">
        <span aria-hidden="true">Theme</span>
        <SharedText
          host={session}
          text={planParts(session.doc).theme}
          readOnly={readOnly}
          label="Theme"
          maxLength={120}
        />
      </div>
      {theme && (
        <details className={styles.more}>
          <summary>What the theme has to train at least</summary>
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
      )}
    </>
  );
}

const percentOf = (share: number | undefined) => (share === undefined ? undefined : Math.round(share * 1000) / 10);

function Expected({ session, snap, readOnly }: PartProps) {
  const expected = snap.plan.expected ?? [];
  return (
    <details className={styles.more} open={expected.length > 0}>
      <summary>Expected in the room{expected.length > 0 && `: ${expected.length}`}</summary>
      <fieldset className={styles.ticks} disabled={readOnly}>
        <legend className="visually-hidden">Expected in the room</legend>
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
      <summary>Taken out: {snap.deleted.length}</summary>
      <ul className={styles.takenOut}>
        {snap.deleted.map(({ id, item }) => (
          <li key={id}>
            <span>
              {nameOf({ ...snap.plan, moves: { ...session.studio.moves, ...snap.plan.moves } }, item)}
              {item.kind !== "heading" && <span className="quiet"> {secondsWords(item.seconds)}</span>}
            </span>
            {!readOnly && (
              <button type="button" className="button" onClick={() => putBack(session, id)}>
                Put back
              </button>
            )}
          </li>
        ))}
      </ul>
    </details>
  );
}
