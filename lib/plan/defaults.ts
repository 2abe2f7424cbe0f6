/** Seconds for keys that a plan leaves out (common practice, no source). */
export const PLAN_DEFAULTS = {
  openingSeconds: 60,
  closingSeconds: 60,
  headsUpSeconds: 15,
  countInSeconds: 3,
  gridSeconds: 5,
} as const;
