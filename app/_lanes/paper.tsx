"use client";
import { useEffect, useLayoutEffect, useMemo, useRef, useState } from "react";
import { BodyMap } from "#app/_body-map/body-map.tsx";
import { useFormats } from "#app/_parts/formats.tsx";
import { Legend } from "#app/_parts/legend.tsx";
import type { SessionSnapshot } from "#app/_session/session-types.ts";
import { workShares } from "#lib/balance/balance.ts";
import { SAFETY_NOTE } from "#lib/card/cautions.ts";
/**
 * The whole class on one landscape page: which plan and when it was printed, the lanes, the legend and the safety note.
 * What is too high for the page is laid out wider and drawn smaller, down to what can still be read.
 */
import { dateOfMoment } from "#lib/formats/dates.ts";
import { axisOf, fitScale } from "#lib/lanes/axis.ts";
import type { ClassLanes } from "#lib/lanes/types.ts";
import { clockTime } from "#lib/plan/format.ts";
import { planTitle } from "#lib/plan/plan-title.ts";
import { LanesGrid } from "./lanes-grid.tsx";
import { GUTTER, LEAST_PAPER_ZOOM, PAPER } from "./metrics.ts";
import { NumberedNames } from "./numbered-names.tsx";
import styles from "./paper.module.css";

interface PaperProps {
  readonly snap: SessionSnapshot;
  readonly lanes: ClassLanes;
  readonly roomName: string;
}

export function Paper({ snap, lanes, roomName }: PaperProps) {
  const shown = useMemo(() => ({ ...lanes, lanes: lanes.lanes.filter((lane) => lane.kind !== "present") }), [lanes]);
  const [page, zoom] = usePageZoom();
  const axis = useMemo(() => {
    const seconds = Math.max(shown.total, shown.lengthSeconds);
    return axisOf({ ...shown, scale: fitScale(seconds, PAPER.width / zoom - GUTTER.paper - EDGE_PX) });
  }, [shown, zoom]);
  return (
    <article ref={page} className={styles.paper} style={{ zoom, width: PAPER.width / zoom }}>
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
      <NumberedNames lanes={shown} axis={axis} selected={null} paper />
      <Legend lanes paper />
      <p className={styles.care}>{SAFETY_NOTE.join(" ")}</p>
    </article>
  );
}

/** Left free at the right end for half the width of a mark, px. */
const EDGE_PX = 8;

const STEP = 0.97;

/** Smaller step by step until it fits the page. Measured before anything is shown, and again when the fonts are loaded. */
function usePageZoom() {
  const page = useRef<HTMLElement>(null);
  const [{ zoom, fonts }, setPage] = useState({ zoom: 1, fonts: 0 });
  useEffect(() => {
    const again = () => setPage((before) => ({ zoom: 1, fonts: before.fonts + 1 }));
    document.fonts.addEventListener("loadingdone", again);
    return () => document.fonts.removeEventListener("loadingdone", again);
  }, []);
  // biome-ignore lint/correctness/useExhaustiveDependencies: other fonts have other heights
  useLayoutEffect(() => {
    const height = page.current?.getBoundingClientRect().height ?? 0;
    if (height <= PAPER.height || zoom <= LEAST_PAPER_ZOOM) return;
    setPage((before) => ({ ...before, zoom: Math.max(LEAST_PAPER_ZOOM, zoom * STEP) }));
  }, [zoom, fonts]);
  return [page, zoom] as const;
}

function PaperHead({ snap, roomName }: { snap: SessionSnapshot; roomName: string }) {
  const { plan, state, total, balance } = snap;
  const signed = state.state === "signed-off";
  const today = dateOfMoment(Date.now(), useFormats(), true);
  return (
    <header className={styles.paperHead}>
      <div>
        <h1>{planTitle(plan.title)}</h1>
        <p>{[plan.theme?.name, roomName, plan.equipment.name].filter(Boolean).join(" · ")}</p>
      </div>
      {/* The lanes of muscles on the same page have the words and the shares. */}
      <div className={styles.body}>
        <BodyMap shares={workShares(balance)} layout="lying" />
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
