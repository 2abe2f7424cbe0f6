"use client";
/** The lanes on their time axis: a picture, and for keyboard and screen reader a grid of lanes by items. */
import { Fragment, useMemo } from "react";
import type { Axis } from "#lib/lanes/axis.ts";
import type { ClassLanes, Lane } from "#lib/lanes/types.ts";
import type { Equipment } from "#lib/plan/schema.ts";
import { Ground, Minutes } from "./ground.tsx";
import { LaneRow } from "./lane-row.tsx";
import styles from "./lanes.module.css";
import type { useWalk } from "./use-walk.ts";
import { workNamesFit } from "./work-row.tsx";

interface LanesGridProps {
  readonly lanes: ClassLanes;
  readonly axis: Axis;
  /** Width of the lanes' names, px. */
  readonly gutter: number;
  readonly equipment: Equipment;
  readonly selected: string | null;
  readonly walk: ReturnType<typeof useWalk>;
  readonly paper: boolean;
}

/** Captions over the first lane of a kind. */
const CAPTIONS: Readonly<Partial<Record<Lane["kind"], string>>> = { muscle: "muscles", caution: "cautions" };

export function LanesGrid({ lanes, axis, gutter, equipment, selected, walk, paper }: LanesGridProps) {
  const chosen = selected === null ? null : (lanes.columns.find((column) => column.item === selected) ?? null);
  const size = { ...lengths(gutter, lanes.total * axis.scale), width: gutter + axis.width };
  const { grid, onKeyDown, onClick, onFocus, onPointerOver, onPointerLeave } = walk;
  return (
    <div className={styles.inner} data-paper={paper || undefined} style={size}>
      <Ground axis={axis} total={lanes.total} lengthSeconds={lanes.lengthSeconds} chosen={chosen} />
      <Minutes axis={axis} />
      {/* biome-ignore lint/a11y/useSemanticElements: a table's cells cannot lie on a time axis */}
      <div
        ref={grid}
        role="grid"
        aria-label="The whole class: lanes by items"
        aria-describedby="lanes-keys-hint"
        aria-colcount={lanes.columns.length + 1}
        className={styles.grid}
        tabIndex={-1}
        {...{ onKeyDown, onClick, onFocus, onPointerOver, onPointerLeave }}
      >
        <Rows {...{ lanes, axis, equipment, selected, walk, paper }} />
      </div>
      {!paper && <Minutes axis={axis} />}
    </div>
  );
}

function Rows({ lanes, axis, equipment, selected, walk, paper }: Omit<LanesGridProps, "gutter">) {
  const work = lanes.lanes.find((lane) => lane.kind === "work");
  const names = useMemo(() => (work ? workNamesFit(work, axis) : NO_NAMES), [work, axis]);
  const { here } = walk;
  return lanes.lanes.map((lane, i) => (
    <Fragment key={lane.id}>
      {CAPTIONS[lane.kind] !== undefined && lanes.lanes[i - 1]?.kind !== lane.kind && (
        <p className={styles.caption} aria-hidden="true">
          {CAPTIONS[lane.kind]}
        </p>
      )}
      <LaneRow
        {...{ lane, axis, names, equipment, paper }}
        focus={here?.lane.id === lane.id ? here.cell.key : null}
        selected={lane.kind === "work" ? selected : null}
      />
    </Fragment>
  ));
}

const lengths = (gutter: number, total: number) => ({ "--gutter": `${gutter}px`, "--total": `${total}px` });

const NO_NAMES: ReturnType<typeof workNamesFit> = { height: 48, fits: [], numbered: false };
