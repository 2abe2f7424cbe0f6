"use client";
/** An offer to keep the springs of the item before: how far to move instead, what that changes, what it saves. */
import { useFormats } from "#app/_parts/formats.tsx";
import type { KeptSprings } from "#lib/load/keep-springs.ts";
import { canStay, keptDetail, keptSentence } from "#lib/load/load-words.ts";
import { springWords } from "#lib/plan/format.ts";
import type { Move, MoveItem, Plan } from "#lib/plan/schema.ts";
import { setSprings } from "../_session/acts.ts";
import { nameOf } from "../_session/item-words.ts";
import type { PlanSession } from "../_session/session.ts";
import styles from "./load.module.css";

interface OfferProps {
  readonly session: PlanSession;
  readonly plan: Plan;
  readonly item: MoveItem;
  readonly move: Move;
  readonly kept: KeptSprings;
  readonly readOnly: boolean;
}

export function KeepSpringsOffer({ session, plan, item, move, kept, readOnly }: OfferProps) {
  const f = useFormats();
  const springs = springWords(plan.equipment, kept.before.springs);
  const detail = keptDetail(plan, kept, nameOf(plan, kept.before), f);
  return (
    <div className={`done ${styles.offer}`}>
      <p>
        <b>{keptSentence(move, kept, f)}</b>
      </p>
      {detail && <p className="small">{detail}</p>}
      {!readOnly && canStay(kept) && (
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
