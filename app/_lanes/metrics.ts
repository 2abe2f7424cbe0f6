/** Sizes of the whole class on the screen and on paper, in px. */
import type { LaneKind } from "#lib/lanes/types.ts";

/** Least height of each lane; a long name makes it higher. Work and headings are as high as their names need. */
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
/** The same on paper, where all lanes have to fit one page. */
export const PAPER_LANE_PX: typeof LANE_PX = { ...LANE_PX, talk: 42, crew: 30, breath: 30, muscle: 13, caution: 13 };

/** Under the names in a block: the word for the side, and the texture of the pattern. */
export const SIDE_PX = 16;
export const TEXTURE_PX = 8;

/** Over the names: the window of the plate, and the figure in it where the block is wide enough. */
export const WINDOW_PX = 46;
export const FIGURE_PX = 44;
export const LEAST_FIGURE_PX = 24;

/** Width of the lanes' names. */
export const GUTTER = { wide: 164, narrow: 108, paper: 170 } as const;
/** Room inside the margins of a landscape page, on A4 and on letter paper alike. */
export const PAPER = { width: 984, height: 712 } as const;
/** Smaller than this it cannot be read. */
export const LEAST_PAPER_ZOOM = 0.62;

export const TYPE = { small: 12, heading: 12, headingLine: 16 } as const;
