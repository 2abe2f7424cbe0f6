"use client";
/** Words that this person typed about an item that is not in the plan any more: to read, to copy, to discard. */
import { KeptWords } from "#app/_parts/kept-words.tsx";
import type { PlanSession } from "#app/_session/session.ts";
import type { SessionSnapshot } from "#app/_session/session-types.ts";
import { withoutPlace } from "#app/_session/typed/typed-words.ts";
import { useTypedList } from "#app/_session/typed/use-typed.ts";
import styles from "./taken-out.module.css";
import { TYPED_KEPT } from "./taken-out-words.ts";

/** They are in their field again once the item is put back. */
export function TypedKept({ session, snap }: { readonly session: PlanSession; readonly snap: SessionSnapshot }) {
  const typed = useTypedList(session.typed);
  const kept = snap.ready ? withoutPlace(typed, snap.plan.items) : [];
  if (kept.length === 0) return null;
  return (
    <section className={`notice ${styles.notice}`} aria-label={TYPED_KEPT.title}>
      <p role="alert">{TYPED_KEPT.sentence}</p>
      {kept.map(({ place, label, words }) => (
        <div key={place}>
          <KeptWords label={label} words={words} />
          <button type="button" className="text-button text-button-low" onClick={() => session.typed.drop(place)}>
            {TYPED_KEPT.discard}
          </button>
        </div>
      ))}
    </section>
  );
}
