"use client";
/**
 * The whole class on one lying page: what it is and of when, the lanes, what the marks mean, and the words of care. It is
 * laid out wider and then drawn smaller until all lanes are on the page, down to what can still be read.
 */
import { useMemo } from "react";
import { Legend } from "#app/_plan/legend.tsx";
import type { SessionSnapshot } from "#app/_plan/session-types.ts";
import { SAFETY_NOTE } from "#lib/card/cautions.ts";
import { axisOf, fitScale } from "#lib/lanes/axis.ts";
import type { ClassLanes } from "#lib/lanes/types.ts";
import { clockTime } from "#lib/plan/format.ts";
import { heightOf } from "./lane-row.tsx";
import styles from "./lanes.module.css";
import { LanesGrid } from "./lanes-grid.tsx";
import { GUTTER, LEAST_PAPER_ZOOM, PAPER } from "./metrics.ts";
import { NumberKey } from "./number-key.tsx";
import { namesOf } from "./work-row.tsx";

interface PaperProps {
  readonly snap: SessionSnapshot;
  readonly lanes: ClassLanes;
  readonly roomName: string;
}

/** Px of everything on the page but the lanes: title, minutes, captions, legend, words of care. */
const AROUND_PX = 210;

export function Paper({ snap, lanes, roomName }: PaperProps) {
  const shown = useMemo(() => ({ ...lanes, lanes: lanes.lanes.filter((lane) => lane.kind !== "present") }), [lanes]);
  const { axis, zoom } = useMemo(() => fitPage(shown), [shown]);
  return (
    <article className={styles.paper} style={{ zoom, width: PAPER.width / zoom }}>
      <PaperHead snap={snap} roomName={roomName} />
      <LanesGrid
        lanes={shown}
        axis={axis}
        gutter={GUTTER.paper}
        equipment={snap.plan.equipment}
        selected={null}
        walk={NO_WALK}
        paper
      />
      <NumberKey lanes={shown} axis={axis} selected={null} />
      <Legend lanes paper />
      <p className={styles.care}>{SAFETY_NOTE.join(" ")}</p>
    </article>
  );
}

function fitPage(lanes: ClassLanes) {
  const seconds = Math.max(lanes.total, lanes.lengthSeconds);
  let zoom = 1;
  for (;;) {
    const scale = fitScale(seconds, PAPER.width / zoom - GUTTER.paper - 4);
    const axis = axisOf({ ...lanes, scale });
    const height = lanesHeight(lanes, axis) + AROUND_PX;
    if (height * zoom <= PAPER.height || zoom <= LEAST_PAPER_ZOOM) return { axis, zoom };
    zoom = Math.max(LEAST_PAPER_ZOOM, zoom - 0.03);
  }
}

function lanesHeight({ lanes }: ClassLanes, axis: ReturnType<typeof axisOf>): number {
  const work = lanes.find((lane) => lane.kind === "work");
  if (!work) return 0;
  const names = namesOf(work, axis);
  return lanes.reduce((sum, lane) => sum + heightOf({ lane, axis, names, paper: true }) + 1, 0);
}

function PaperHead({ snap, roomName }: { snap: SessionSnapshot; roomName: string }) {
  const { plan, state, total } = snap;
  const signed = state.state === "signed-off";
  const today = new Date().toLocaleDateString("en-GB", { day: "numeric", month: "long", year: "numeric" });
  return (
    <header className={styles.paperHead}>
      <div>
        <h1>{plan.title.trim() || "Plan without a title"}</h1>
        <p>{[plan.theme?.name, roomName, plan.equipment.name].filter(Boolean).join(" · ")}</p>
      </div>
      <p>
        <b>{`${clockTime(total)} of ${clockTime(plan.lengthSeconds)}`}</b>
        <br />
        {signed ? `edition ${state.edition}` : `draft${state.edition > 0 ? ` after edition ${state.edition}` : ""}`}
        {`, printed ${today}`}
      </p>
    </header>
  );
}

const nothing = () => undefined;
const NO_WALK = {
  grid: { current: null },
  here: null,
  over: null,
  onKeyDown: nothing,
  onClick: nothing,
  onFocus: nothing,
  onPointerOver: nothing,
  onPointerLeave: nothing,
};
