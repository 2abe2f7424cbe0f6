/** For whoever shows the moves: the set-up as it should stand now, and the next one with what to change. */

import type { FloorItem } from "#lib/floor/view.ts";
import { crewSheet } from "#lib/line/crew.ts";
import { setupWords } from "#lib/line/setup-words.ts";
import { sideWords, springWords } from "#lib/plan/format.ts";
import type { Plan } from "#lib/plan/schema.ts";
import { Coils } from "../_parts/coils.tsx";
import { titled } from "../_parts/coming.tsx";
import { Figure } from "./figure.tsx";
import styles from "./follow.module.css";
import { nowWords, type ViewProps } from "./view-props.ts";

export function DemonstratorView({ card, view, now, position }: ViewProps) {
  const changing = view.phase === "change";
  const { plan } = now;
  const notes = crewSheet(now, position).now;
  return (
    <div className={styles.demonstrator}>
      <section className={styles.part} aria-label="Now">
        <div className={styles.head}>
          <h1>
            {changing && <span className={styles.tag}>change to</span>} {nowWords(view)}
          </h1>
          <Figure view={view} />
        </div>
        {view.item?.kind === "move" && <SetUp plan={plan} item={view.item} />}
        {changing && view.item && <Changes item={view.item} plan={plan} />}
        {notes.map(({ text }) => (
          <p key={text} className={styles.note}>
            {text}
          </p>
        ))}
        {view.phase === "opening" && (
          <ul className={styles.care} aria-label="With care">
            {card.cautions.note.map((sentence) => (
              <li key={sentence}>{sentence}</li>
            ))}
          </ul>
        )}
      </section>
      <section className={styles.part} aria-label="Next" data-near={view.headsUp}>
        <p className={styles.label}>{view.headsUp ? "coming up" : "next"}</p>
        <h2>{view.next ? titled(view.next) : "Nothing more"}</h2>
        {view.next?.kind === "move" && <Changes item={view.next} plan={plan} />}
        {view.next?.kind === "move" && <SetUp plan={plan} item={view.next} />}
      </section>
    </div>
  );
}

function SetUp({ plan, item }: { plan: Plan; item: FloorItem }) {
  const words = setupWords(plan, item.id);
  if (!words) return null;
  const counts = Object.fromEntries(item.springs.map((spring) => [spring.id, spring.count]));
  const rows: readonly (readonly [string, React.ReactNode])[] = [
    [
      "springs",
      <span key="springs">
        <Coils springs={item.springs} equipment={plan.equipment} /> {springWords(plan.equipment, counts)}
      </span>,
    ],
    ["body", words.body],
    ["facing", words.facing],
    ["hands", words.hands],
    ["feet", words.feet],
    ...(item.side && item.side !== "both" ? [["side", sideWords(item.side)] as const] : []),
  ];
  return (
    <dl className={styles.setup}>
      {rows.map(([name, value]) => (
        <div key={name}>
          <dt>{name}</dt>
          <dd>{value}</dd>
        </div>
      ))}
    </dl>
  );
}

function Changes({ item, plan }: { item: FloorItem; plan: Plan }) {
  if (item.changes.length === 0) return <p className={styles.change}>same place</p>;
  return (
    <ol className={styles.change} aria-label="What to change">
      {item.changes.map(({ words, springs }) => (
        <li key={words}>
          {springs && <Coils springs={springs} equipment={plan.equipment} />} {words}
        </li>
      ))}
    </ol>
  );
}
