"use client";
/**
 * How heavy the chosen item is, where it changes a decision: force over travel beside one step lighter and heavier and
 * beside the item before, where the person starts, whether the springs could stay on, and the weight on the hands.
 */
import { type ReactNode, useEffect, useState } from "react";
import { cycleSeconds } from "#lib/clock/clock.ts";
import { keepSprings } from "#lib/load/keep-springs.ts";
import { travelMm, workJ, worksSprings } from "#lib/load/load.ts";
import { newtonWords } from "#lib/load/load-words.ts";
import { plainNumber } from "#lib/plan/format.ts";
import { moveOf } from "#lib/plan/lookup.ts";
import type { Move, MoveItem, Plan } from "#lib/plan/schema.ts";
import { setOffset, setSprings } from "../acts.ts";
import panel from "../panel/panel.module.css";
import type { PlanSession } from "../session.ts";
import type { SessionSnapshot } from "../session-types.ts";
import { HandsLoad } from "./hands-load.tsx";
import { KeepSpringsOffer } from "./keep-offer.tsx";
import { loadLines } from "./lines.ts";
import styles from "./load.module.css";
import { LoadChart } from "./load-chart.tsx";
import { LoadTable } from "./load-table.tsx";
import { OffsetSlider } from "./offset-slider.tsx";
import { LOAD_NOTE } from "./words.ts";

interface LoadPartProps {
  readonly session: PlanSession;
  readonly snap: SessionSnapshot;
  readonly item: MoveItem;
  readonly readOnly: boolean;
}

/** Nothing for a move that neither works against springs nor names a pose. */
export function LoadPart(props: LoadPartProps) {
  const move = moveOf(props.snap.plan, props.item);
  if (!move || (!worksSprings(move) && !move.handsShare)) return null;
  const hands = move.handsShare && <HandsLoad pose={move.handsShare.pose} />;
  return (
    <section className={styles.load} aria-label="Load">
      {worksSprings(move) ? <SpringLoad {...props} move={move} hands={hands} /> : hands}
    </section>
  );
}

/** Open or not stays as it was left from item to item; on a phone, where it would hide the rest, it begins closed. */
let leftOpen: boolean | null = null;
const WIDE = "(min-width: 760px)";

function SpringLoad({ session, snap, item, readOnly, move, hands }: LoadPartProps & { move: Move; hands: ReactNode }) {
  const { plan } = snap;
  const saved = item.offsetMm ?? 0;
  const [tried, setTried] = useTried(item.id, saved);
  const offsetMm = tried ?? saved;
  const kept = keepSprings(plan, item);
  const lines = loadLines(plan, item, move, offsetMm);
  const [start, middle, end] = lines[0]?.newtons ?? [0, 0, 0];
  const open = leftOpen ?? matchMedia(WIDE).matches;
  const take = (mm: number) => {
    setTried(null);
    setOffset(session, item, mm);
  };
  return (
    <>
      {kept && <KeepSpringsOffer {...{ session, plan, item, move, kept, readOnly }} />}
      <details
        className={panel.more}
        open={open}
        onToggle={(event) => {
          leftOpen = event.currentTarget.open;
        }}
      >
        <summary>
          <h3>{move.resistance === "assisted" ? "Help of the springs" : "Load"}</h3>
          <span
            className={styles.sum}
          >{`${newtonWords(start)} to ${newtonWords(end)}, ${newtonWords(middle)} in the middle`}</span>
        </summary>
        <div className={styles.parts}>
          <LoadChart lines={lines} asked={move.loadN} />
          <OffsetSlider
            offsetMm={offsetMm}
            says={`${newtonWords(middle)} in the middle`}
            disabled={readOnly}
            onTry={setTried}
            onTake={take}
          />
          <LoadTable
            lines={lines}
            move={move}
            equipment={plan.equipment}
            onTake={readOnly ? undefined : (springs) => setSprings(session, item, springs)}
          />
          <Work {...{ plan, item, move, offsetMm }} />
          {hands}
          <p className={styles.note}>{LOAD_NOTE}</p>
        </div>
      </details>
    </>
  );
}

/** What the slider tries, until it is let go or somebody writes another offset. */
function useTried(itemId: string, saved: number) {
  const [tried, setTried] = useState<number | null>(null);
  // biome-ignore lint/correctness/useExhaustiveDependencies: another item or another offset ends the trial
  useEffect(() => setTried(null), [itemId, saved]);
  return [tried, setTried] as const;
}

/** Joules a repetition, out; nothing for a hold, which goes nowhere. */
function Work({ plan, item, move, offsetMm }: { plan: Plan; item: MoveItem; move: Move; offsetMm: number }) {
  if (cycleSeconds(move) === null) return null;
  const [fromMm, toMm] = travelMm(plan, move);
  const joules = workJ(plan.equipment, item.springs, { fromMm, toMm, offsetMm });
  return (
    <p className={styles.work}>
      Work a repetition: <b>{`${plainNumber(joules)} J`}</b>
      <span className="quiet">{` over ${plainNumber((toMm - fromMm) / 10)} cm`}</span>
    </p>
  );
}
