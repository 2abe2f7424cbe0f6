"use client";
/** One finding: what is wrong, how much it weighs, and the act that mends it. */
import type { PlanSession } from "#app/_plan/session.ts";
import { useSnapshot } from "#app/_plan/use-session.ts";
import { nameOf } from "#app/_plan/words.ts";
import { itemById } from "#lib/plan/lookup.ts";
import type { FindingLevel } from "#lib/plan/schema.ts";
import { ruleById } from "#lib/rules/registry.ts";
import type { Finding } from "#lib/rules/types.ts";
import styles from "./margin.module.css";
import { MendAct } from "./mend-act.tsx";

export const LEVEL_WORDS: Readonly<Record<FindingLevel, string>> = {
  must: "must fix",
  look: "look again",
  info: "for information",
};

interface Props {
  readonly session: PlanSession;
  readonly finding: Finding;
  readonly selected: boolean;
}

export function FindingSlip({ session, finding, selected }: Props) {
  const title = ruleById(finding.rule)?.title ?? "A check could not run";
  return (
    <article
      className={styles.slip}
      data-level={finding.level}
      data-selected={selected || undefined}
      aria-label={title}
    >
      <header className={styles.slipHead}>
        <h4>{title}</h4>
        <span className={styles.level}>{LEVEL_WORDS[finding.level]}</span>
      </header>
      <p>{finding.message}</p>
      <div className={styles.slipActs}>
        <MendAct session={session} finding={finding} />
        <JumpLinks session={session} ids={finding.items} />
      </div>
    </article>
  );
}

/** The longest row of names a slip shows; a finding about everything needs no list. */
const MOST_LINKS = 4;

export function JumpLinks({ session, ids }: { readonly session: PlanSession; readonly ids: readonly string[] }) {
  const { plan, selectedId } = useSnapshot(session);
  const shown = ids.slice(0, MOST_LINKS).flatMap((id) => itemById(plan, id) ?? []);
  const only = shown.length === 1;
  if (only && shown[0]?.id === selectedId) return null;
  return (
    <>
      {shown.map((item) => {
        const side = item.kind === "move" && (item.side === "left" || item.side === "right") ? `, ${item.side}` : "";
        const name = `${nameOf(plan, item)}${side}`;
        return (
          <button key={item.id} type="button" className={styles.link} onClick={() => session.select(item.id)}>
            {only ? (
              <>
                go to <span className="visually-hidden">{name}</span>it
              </>
            ) : (
              name
            )}
          </button>
        );
      })}
      {ids.length > MOST_LINKS && <span className={styles.more}>and {ids.length - MOST_LINKS} more</span>}
    </>
  );
}
