/** The small sign on the rail for a tie or for what an item comes after, with its words. */
import { placedName } from "#app/_session/placed-name.ts";
import type { MoveItem, Plan } from "#lib/plan/schema.ts";
import { comesAfter, tieState } from "#lib/plan/ties.ts";
import styles from "./hold.module.css";

export interface HoldMark {
  readonly kind: "tie" | "after";
  readonly words: string;
  /** The item is not where it should be. */
  readonly amiss: boolean;
}

/** Empty for an item that may stand anywhere. Of two tied items the lower one has the sign of their tie. */
export function holdMarks(plan: Plan, item: MoveItem): HoldMark[] {
  return [...tieMarks(plan, item), ...afterMarks(plan, item)];
}

function tieMarks(plan: Plan, item: MoveItem): HoldMark[] {
  const state = tieState(plan, item);
  if (!state) return [];
  const apart = state.apart.length > 0 && !state.above && !state.below;
  if (apart) return [{ kind: "tie", words: "apart from the item it is tied to", amiss: true }];
  return state.above ? [{ kind: "tie", words: "stays next to the one above", amiss: false }] : [];
}

function afterMarks(plan: Plan, item: MoveItem): HoldMark[] {
  const earlier = comesAfter(plan, item);
  const [first] = earlier;
  if (!first) return [];
  const amiss = earlier.filter(({ holds }) => !holds);
  const named = amiss[0] ?? first;
  const more = (amiss.length > 0 ? amiss : earlier).length - 1;
  const name = `${placedName(plan, named.item)}${more > 0 ? ` and ${more} more` : ""}`;
  return [
    { kind: "after", words: amiss.length > 0 ? `should come after ${name}` : `after ${name}`, amiss: amiss.length > 0 },
  ];
}

export function HoldSign({ mark }: { readonly mark: HoldMark }) {
  return (
    <span className={styles.sign} data-amiss={mark.amiss || undefined}>
      <svg width="12" height="14" viewBox="0 0 12 14" aria-hidden="true">
        <path d={mark.kind === "tie" ? "M2 1 V13 M2 4 H9 M2 10 H9" : "M6 1 V11 M2 7.5 L6 11.5 L10 7.5 M2 13 H10"} />
      </svg>
      {mark.words}
    </span>
  );
}
