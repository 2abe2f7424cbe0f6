/** Sizes of the whole class on the screen and on paper, in px. */
import type { LaneKind } from "#lib/lanes/types.ts";

/** Least height of each lane; its name can make it higher. Work and headings are as high as their names need. */
export const LANE_PX: Readonly<Record<Exclude<LaneKind, "work" | "headings">, number>> = {
  springs: 44,
  standing: 38,
  talk: 52,
  voice: 22,
  crew: 36,
  breath: 36,
  muscle: 18,
  caution: 18,
  found: 20,
  threads: 22,
  present: 24,
};
/** The same on paper, where one page has to hold them all. */
export const PAPER_LANE_PX: typeof LANE_PX = { ...LANE_PX, talk: 42, crew: 30, breath: 30, muscle: 13, caution: 13 };

/** Under the names in a block: the side in a word, and the texture that says the pattern. */
export const SIDE_PX = 16;
export const TEXTURE_PX = 8;

/** Width of the lanes' names. */
export const GUTTER = { wide: 164, narrow: 108, paper: 170 } as const;
/** What both A4 and letter paper have inside their margins, lying. */
export const PAPER = { width: 984, height: 712 } as const;
/** Smaller than this nobody reads it. */
export const LEAST_PAPER_ZOOM = 0.62;

export const TYPE = { small: 12, heading: 12, headingLine: 16 } as const;
