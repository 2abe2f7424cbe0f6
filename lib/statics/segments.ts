/**
 * A body in numbers: the mass of each segment, its centre of mass and its length. There are three published tables, and
 * each result uses one of them whole.
 */

/** Part of the body's mass, one side for limbs, and the centre of mass as part of the length from the named end. */
interface Segment {
  readonly mass: number;
  readonly com: number;
}

export interface SegmentTable {
  readonly foot: Segment;
  /** From the knee. */
  readonly shank: Segment;
  /** From the hip. */
  readonly thigh: Segment;
  /** From the hip. */
  readonly trunk: Segment;
  /** Head and neck; the centre as a distance beyond the shoulder in the line of the trunk, in statures. */
  readonly head: Segment;
  /** From the shoulder. */
  readonly upperArm: Segment;
  /** From the elbow. */
  readonly forearm: Segment;
  /** From the wrist. */
  readonly hand: Segment;
}

/**
 * Segment lengths as parts of stature: Drillis & Contini 1966, as drawn in Winter, Biomechanics and Motor Control of
 * Human Movement, fig. 4.1. Quoted from memory; they agree with each other (hip 0.530 - knee 0.285 = thigh 0.245).
 */
export const SEGMENT_LENGTHS = {
  shank: 0.246,
  thigh: 0.245,
  trunk: 0.288,
  upperArm: 0.186,
  forearm: 0.146,
  /** Wrist to the knuckles: half of the hand's 0.108 (judgement). */
  handToKnuckles: 0.054,
} as const;
const SHOULDER_HEIGHT = 0.818;
/** The ear canal stands level with the eyes when the head is upright. */
const EAR_HEIGHT = 0.936;
/** The angle of the jaw stands about level with the chin (judgement). */
const JAW_HEIGHT = 0.87;

/** De Leva gives the head's centre from the crown towards the angle of the jaw. */
const beyondShoulder = (fromCrown: number): number => 1 - fromCrown * (1 - JAW_HEIGHT) - SHOULDER_HEIGHT;

/**
 * Winter (1990, 2005), after Dempster 1955: cadavers of a few older men. The result uses this table. Head and
 * neck have their centre at the ear canal; the trunk runs from hip to shoulder.
 */
export const WINTER: SegmentTable = {
  foot: { mass: 0.0145, com: 0.5 },
  shank: { mass: 0.0465, com: 0.433 },
  thigh: { mass: 0.1, com: 0.433 },
  trunk: { mass: 0.497, com: 0.5 },
  head: { mass: 0.081, com: EAR_HEIGHT - SHOULDER_HEIGHT },
  upperArm: { mass: 0.028, com: 0.436 },
  forearm: { mass: 0.016, com: 0.43 },
  hand: { mass: 0.006, com: 0.506 },
};

/** De Leva 1996, J Biomech 29:1223-1230, young women; trunk from mid-hip to mid-shoulder. Only for the band. */
export const DE_LEVA_FEMALE: SegmentTable = {
  foot: { mass: 0.0129, com: 0.4014 },
  shank: { mass: 0.0481, com: 0.4352 },
  thigh: { mass: 0.1478, com: 0.3612 },
  trunk: { mass: 0.4257, com: 1 - 0.3782 },
  head: { mass: 0.0668, com: beyondShoulder(0.5894) },
  upperArm: { mass: 0.0255, com: 0.5754 },
  forearm: { mass: 0.0138, com: 0.4559 },
  hand: { mass: 0.0056, com: 0.7474 },
};

/** The same for young men. Only for the band. */
export const DE_LEVA_MALE: SegmentTable = {
  foot: { mass: 0.0137, com: 0.4415 },
  shank: { mass: 0.0433, com: 0.4395 },
  thigh: { mass: 0.1416, com: 0.4095 },
  trunk: { mass: 0.4346, com: 1 - 0.431 },
  head: { mass: 0.0694, com: beyondShoulder(0.5976) },
  upperArm: { mass: 0.0271, com: 0.5772 },
  forearm: { mass: 0.0162, com: 0.4574 },
  hand: { mass: 0.0061, com: 0.79 },
};

export const ALL_TABLES: readonly SegmentTable[] = [WINTER, DE_LEVA_FEMALE, DE_LEVA_MALE];
