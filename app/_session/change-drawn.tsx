"use client";
/** The change into an item as a figure: the old set-up pale, the new one in ink, what comes off and goes on below. */
import { useId, useMemo, useState } from "react";
import { changeFigure } from "#lib/figure/change.ts";
import { changeSetups } from "#lib/figure/change-of-plan.ts";
import { drawChange } from "#lib/figure/drawing/draw-change.ts";
import type { Plan } from "#lib/plan/schema.ts";
import { ChangePicture } from "../_parts/change-figure.tsx";
import { useMedia } from "../_parts/use-media.ts";
import { useSteady } from "../_parts/use-steady.ts";
import { useChangeActs } from "./change-acts.ts";
import styles from "./change-drawn.module.css";

/** Wide enough for the springs' names in the page's own size. */
const PX = 320;

/** Open where it stands beside the words; on a phone, where it would come before what is written, it is asked for. */
export function ChangeDrawn({ plan, itemId }: { readonly plan: Plan; readonly itemId: string }) {
  const phone = useMedia("(max-width: 759px)");
  const [asked, setAsked] = useState<boolean | null>(null);
  const open = asked ?? !phone;
  const steady = useSteady();
  const acts = useChangeActs(plan);
  // Another plan after every letter, the same set-ups nearly always: the bodies are worked out only when those change.
  const setups = steady(itemId, acts.get(itemId)?.length ? changeSetups(plan, itemId) : null);
  const drawing = useMemo(
    () => (setups && open ? drawChange(changeFigure(setups.from, setups.to, setups.equipment), { px: PX }) : null),
    [setups, open],
  );
  const id = useId();
  if (!setups) return null;
  return (
    <div className={styles.drawn}>
      <button
        type="button"
        className="text-button text-button-low small"
        aria-expanded={open}
        aria-controls={id}
        onClick={() => setAsked(!open)}
      >
        {open ? "Hide the change as a figure" : "Show the change as a figure"}
      </button>
      <div id={id}>{drawing && <ChangePicture drawing={drawing} px={PX} />}</div>
    </div>
  );
}
