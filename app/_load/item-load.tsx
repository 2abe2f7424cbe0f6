"use client";
import { type ReactNode, useEffect, useState } from "react";
import { useFormats } from "#app/_parts/formats.tsx";
import { cycleSeconds } from "#lib/clock/clock.ts";
/**
 * How heavy the chosen item is: force over travel beside one step lighter, one step heavier and the item before; where the
 * person starts; whether the springs could stay on; and the weight on the hands.
 */
import { distanceWords, forceWords } from "#lib/formats/units.ts";
import { keepSprings } from "#lib/load/keep-springs.ts";
import { slackMm, travelMm, workJ, worksSprings } from "#lib/load/load.ts";
import { slackWords } from "#lib/load/load-words.ts";
import { plainNumber } from "#lib/plan/format.ts";
import { moveOf } from "#lib/plan/lookup.ts";
import type { Move, MoveItem, Plan } from "#lib/plan/schema.ts";
import panel from "../_parts/panel.module.css";
import { setOffset, setSprings } from "../_session/acts.ts";
import type { PlanSession } from "../_session/session.ts";
import type { SessionSnapshot } from "../_session/session-types.ts";
import { HandsLoad } from "./hands-load.tsx";
import { KeepSpringsOffer } from "./keep-offer.tsx";
import styles from "./load.module.css";
import { LoadChart } from "./load-chart.tsx";
import { type LoadLine, loadLines } from "./load-lines.ts";
import { LoadTable } from "./load-table.tsx";
import { inTheMiddle, LOAD_NOTE } from "./load-words.ts";
import { OffsetSlider } from "./offset-slider.tsx";

interface LoadPartProps {
  readonly session: PlanSession;
  readonly snap: SessionSnapshot;
  readonly item: MoveItem;
  readonly readOnly: boolean;
}

/** Empty for a move that neither works against springs nor names a pose. */
export function ItemLoad(props: LoadPartProps) {
  const move = moveOf(props.snap.plan, props.item);
  if (!move || (!worksSprings(move) && !move.handsShare)) return null;
  const hands = move.handsShare && <HandsLoad pose={move.handsShare.pose} />;
  return (
    <section className={styles.load} aria-label="Load">
      {worksSprings(move) ? <SpringLoad {...props} move={move} hands={hands} /> : hands}
    </section>
  );
}

/** Whether the part is open stays as it was left, from item to item. On a phone, where it hides the rest, it starts closed. */
let leftOpen: boolean | null = null;
const WIDE = "(min-width: 760px)";

interface SpringLoadProps extends LoadPartProps {
  readonly move: Move;
  readonly hands: ReactNode;
}

function SpringLoad(props: SpringLoadProps) {
  const { session, snap, item, readOnly, move } = props;
  const { plan } = snap;
  const f = useFormats();
  const [tried, setTried] = useTried(item.id, item.offsetMm ?? 0);
  const offsetMm = tried ?? item.offsetMm ?? 0;
  const kept = keepSprings(plan, item);
  const lines = loadLines(plan, item, move, offsetMm);
  const [start, middle, end] = lines[0]?.newtons ?? [0, 0, 0];
  return (
    <>
      {kept && <KeepSpringsOffer {...{ session, plan, item, move, kept, readOnly }} />}
      <details
        className={panel.more}
        open={leftOpen ?? matchMedia(WIDE).matches}
        onToggle={(event) => {
          leftOpen = event.currentTarget.open;
        }}
      >
        <summary>
          <h3>{move.resistance === "assisted" ? "Help of the springs" : "Load"}</h3>
          <span
            className={styles.sum}
          >{`${forceWords(start, f)} to ${forceWords(end, f)}, ${inTheMiddle(middle, f)}`}</span>
        </summary>
        <Parts {...props} {...{ lines, offsetMm, middle, setTried }} />
      </details>
    </>
  );
}

interface PartsProps extends SpringLoadProps {
  readonly lines: readonly LoadLine[];
  /** What is shown: the offset of the plan, or one that is being tried. */
  readonly offsetMm: number;
  /** Newtons in the middle of the travel. */
  readonly middle: number;
  readonly setTried: (mm: number | null) => void;
}

/** The curve, the place to start from, the choices beside it, and the work. */
function Parts({ session, snap, item, readOnly, move, hands, lines, offsetMm, middle, setTried }: PartsProps) {
  const { plan } = snap;
  const f = useFormats();
  const [fromMm, toMm] = travelMm(plan, move);
  const slack = slackWords(slackMm(plan.equipment, item.springs, { fromMm, toMm, offsetMm }), f);
  const take = (mm: number) => {
    setTried(null);
    setOffset(session, item, mm);
  };
  return (
    <div className={styles.parts}>
      <LoadChart lines={lines} asked={move.loadN} />
      <OffsetSlider
        offsetMm={offsetMm}
        says={slack ? `${inTheMiddle(middle, f)}. ${slack}` : inTheMiddle(middle, f)}
        disabled={readOnly}
        onTry={setTried}
        onTake={take}
      />
      {slack && <p className="small">{slack}</p>}
      <LoadTable
        lines={lines}
        move={move}
        equipment={plan.equipment}
        onTake={readOnly ? undefined : (springs) => setSprings(session, item, springs)}
      />
      <Work {...{ plan, item, move, offsetMm }} />
      {hands}
      <p className="quiet small">{LOAD_NOTE}</p>
    </div>
  );
}

/** The offset that the slider tries, until it is let go or somebody writes another one. */
function useTried(itemId: string, saved: number) {
  const [tried, setTried] = useState<number | null>(null);
  // biome-ignore lint/correctness/useExhaustiveDependencies: another item or another offset ends the trial
  useEffect(() => setTried(null), [itemId, saved]);
  return [tried, setTried] as const;
}

/** Joules of a repetition on the way out; nothing for a hold, in which nothing moves. */
function Work({ plan, item, move, offsetMm }: { plan: Plan; item: MoveItem; move: Move; offsetMm: number }) {
  const f = useFormats();
  if (cycleSeconds(move) === null) return null;
  const [fromMm, toMm] = travelMm(plan, move);
  const joules = workJ(plan.equipment, item.springs, { fromMm, toMm, offsetMm });
  return (
    <p className={styles.work}>
      Work a repetition: <b>{`${plainNumber(joules)} J`}</b>
      <span className="quiet">{` over ${distanceWords(toMm - fromMm, f)}`}</span>
    </p>
  );
}
