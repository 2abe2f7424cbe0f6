"use client";
/** One lane: its name, which stays in view, and its cells along the axis. Drawn again only when something in it changes. */
import { memo } from "react";
import type { Axis } from "#lib/lanes/axis.ts";
import type { NamesFit } from "#lib/lanes/name-fit.ts";
import type { Lane } from "#lib/lanes/types.ts";
import type { Equipment } from "#lib/plan/schema.ts";
import styles from "./lanes.module.css";
import { FoundRow, foundHeight, HeadingsRow, headingLines, PresentRow, ThreadsRow } from "./mark-rows.tsx";
import { LANE_PX, PAPER_LANE_PX, TYPE } from "./metrics.ts";
import { SpringsRow, StandingRow } from "./setup-rows.tsx";
import { BreathRow, CautionRow, CrewLinesRow, MuscleRow, TalkRow, VoiceRow } from "./time-rows.tsx";
import { WorkRow, workHeight } from "./work-row.tsx";

interface LaneRowProps {
  readonly lane: Lane;
  readonly axis: Axis;
  readonly names: NamesFit;
  readonly equipment: Equipment;
  /** Key of the cell that takes the keyboard, if it is in this lane. */
  readonly focus: string | null;
  /** The chosen item, for the lane that shows it. */
  readonly selected: string | null;
  readonly paper: boolean;
}

export const LaneRow = memo(function LaneRow(props: LaneRowProps) {
  const { lane, axis } = props;
  return (
    // biome-ignore lint/a11y/useFocusableInteractive: its cells take the focus
    // biome-ignore lint/a11y/useSemanticElements: a table's rows cannot lie on a time axis
    <div role="row" className={styles.row} data-kind={lane.kind} style={{ minHeight: heightOf(props) }}>
      {/* biome-ignore lint/a11y/useSemanticElements: see above */}
      <div role="rowheader" className={styles.laneName} tabIndex={-1}>
        <span>{lane.name}</span>
        {lane.note !== undefined && <span className={styles.laneNote}>{` ${lane.note}`}</span>}
      </div>
      <div role="presentation" className={styles.track} style={{ width: axis.width }}>
        <Cells {...props} />
      </div>
    </div>
  );
});

function Cells({ lane, axis, names, equipment, focus, selected, paper }: LaneRowProps) {
  const own = { axis, focus };
  switch (lane.kind) {
    case "headings":
      return <HeadingsRow lane={lane} {...own} />;
    case "work":
      return <WorkRow lane={lane} {...own} {...{ names, selected, paper }} />;
    case "springs":
      return <SpringsRow lane={lane} {...own} equipment={equipment} />;
    case "standing":
      return <StandingRow lane={lane} {...own} />;
    case "talk":
      return <TalkRow lane={lane} {...own} />;
    case "voice":
      return <VoiceRow lane={lane} {...own} />;
    case "crew":
      return <CrewLinesRow lane={lane} {...own} />;
    case "breath":
      return <BreathRow lane={lane} {...own} />;
    case "muscle":
      return <MuscleRow lane={lane} {...own} />;
    case "caution":
      return <CautionRow lane={lane} {...own} />;
    case "found":
      return <FoundRow lane={lane} {...own} />;
    case "threads":
      return <ThreadsRow lane={lane} {...own} />;
    case "present":
      return <PresentRow lane={lane} {...own} />;
  }
}

function heightOf({ lane, axis, names, paper }: Pick<LaneRowProps, "lane" | "axis" | "names" | "paper">): number {
  if (lane.kind === "work") return workHeight(names);
  if (lane.kind === "headings") return headingLines(lane, axis) * TYPE.headingLine + 6;
  if (lane.kind === "found") return foundHeight(lane.cells);
  return (paper ? PAPER_LANE_PX : LANE_PX)[lane.kind];
}
