"use client";
/** The springs could stay on: how far to move, what it changes, what it saves; one act takes it. */
import type { KeptSprings } from "#lib/load/keep-springs.ts";
import { plainNumber, springWords } from "#lib/plan/format.ts";
import type { Move, MoveItem, Plan } from "#lib/plan/schema.ts";
import { setSprings } from "../acts.ts";
import type { PlanSession } from "../session.ts";
import { nameOf } from "../words.ts";
import styles from "./load.module.css";
import { keptSentence, newtonWords, placeWords } from "./words.ts";

interface OfferProps {
  readonly session: PlanSession;
  readonly plan: Plan;
  readonly item: MoveItem;
  readonly move: Move;
  readonly kept: KeptSprings;
  readonly readOnly: boolean;
}

export function KeepSpringsOffer({ session, plan, item, move, kept, readOnly }: OfferProps) {
  const { atStart, atMid, atEnd } = kept.newtons;
  const springs = springWords(plan.equipment, kept.before.springs);
  const forbidden = kept.notAllowed.length > 0;
  const sentence = keptSentence(move, kept);
  return (
    <div className={styles.offer}>
      <p>
        <b>{sentence}</b>
      </p>
      <p className="small">
        {`With ${springs} still on from “${nameOf(plan, kept.before)}”, started ${placeWords(kept.offsetMm)}: `}
        {`${newtonWords(atMid)} in the middle (now ${newtonWords(kept.wantedN)}), ${newtonWords(atStart)} at the start, ${newtonWords(atEnd)} at the end.`}
        {kept.savedSeconds > 0 && ` It saves ${plainNumber(kept.savedSeconds)} s of setting up.`}
        {atStart === 0 && " The springs hang slack at the start."}
        {forbidden && ` But the library or the room does not allow that many of ${kept.notAllowed.join(" and ")} here.`}
      </p>
      {!readOnly && !forbidden && (
        <button
          type="button"
          className="button"
          onClick={() => setSprings(session, item, kept.before.springs, kept.offsetMm)}
        >
          Keep {springs} on
        </button>
      )}
    </div>
  );
}
