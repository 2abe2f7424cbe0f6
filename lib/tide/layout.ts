/** How the sheet's width is shared out between its columns, in px. */
import type { TideKind } from "./types.ts";

export interface TideLayout {
  readonly kind: TideKind;
  readonly date: number;
  readonly rail: number;
  readonly group: number;
  readonly like: number;
  readonly coach: number;
  /** How many coaches have a column. */
  readonly coaches: number;
  /** Of what to mend; 0 where it stands under the classes or gave way to the coaches. */
  readonly findings: number;
}

export interface LayoutOf {
  readonly kind: TideKind;
  readonly width: number;
  readonly groups: number;
  readonly coaches: number;
  /** Every coach has a column, in place of what to mend. */
  readonly allCoaches: boolean;
  /** On paper: everything closer, and what to mend stands below. */
  readonly paper?: boolean;
}

/** The least that a rail needs for its words. */
const LEAST_RAIL = { laptop: 400, tablet: 300 } as const;
const MOST_FINDINGS = 276;
const LEAST_FINDINGS = 232;

export function tideLayout(of: LayoutOf): TideLayout {
  if (of.paper) return paper(of);
  if (of.kind === "phone") return phone(of);
  return of.kind === "tablet" ? tablet(of) : laptop(of);
}

function laptop({ width, groups, coaches, allCoaches }: LayoutOf): TideLayout {
  const [date, group, like, coach] = [58, 22, 36, 32];
  const free = width - date - groups * group - like;
  const most = Math.max(0, Math.floor((free - (allCoaches ? 0 : LEAST_FINDINGS) - LEAST_RAIL.laptop) / coach));
  const shown = allCoaches ? coaches : Math.min(coaches, most);
  const rest = free - shown * coach;
  const findings = allCoaches ? 0 : Math.max(LEAST_FINDINGS, Math.min(MOST_FINDINGS, rest - LEAST_RAIL.laptop - 140));
  const rail = Math.max(LEAST_RAIL.laptop, rest - findings);
  return { kind: "laptop", date, rail, group, like, coach, coaches: shown, findings };
}

function paper({ width, groups, coaches }: LayoutOf): TideLayout {
  const [date, group, like] = [52, 15, 28];
  const free = width - date - groups * group - like;
  const coach = coaches <= 6 ? 25 : 20;
  const shown = Math.min(coaches, Math.floor((free - 240) / coach));
  return { kind: "laptop", date, rail: free - shown * coach, group, like, coach, coaches: shown, findings: 0 };
}

function tablet({ width, groups, coaches, allCoaches }: LayoutOf): TideLayout {
  const [date, group, coach] = [56, 18, 26];
  const free = width - date - groups * group;
  const most = Math.max(0, Math.floor((free - LEAST_RAIL.tablet) / coach));
  const shown = allCoaches ? coaches : Math.min(coaches, most);
  const rail = Math.max(LEAST_RAIL.tablet, free - shown * coach);
  return { kind: "tablet", date, rail, group, like: 0, coach, coaches: shown, findings: 0 };
}

/** Classes as words and a few groups; with all groups they take the words' place. */
function phone({ width, groups }: LayoutOf): TideLayout {
  const date = 40;
  const few = groups <= 8;
  const group = few ? 20 : Math.max(14, Math.floor((width - date) / groups));
  const rail = few ? Math.max(120, width - date - groups * group) : 0;
  return { kind: "phone", date, rail, group, like: 0, coach: 0, coaches: 0, findings: 0 };
}
