/** What a plan that leaves a key out takes (common practice, no source). Seconds. */
export const PLAN_DEFAULTS = {
  openingSeconds: 60,
  closingSeconds: 60,
  headsUpSeconds: 15,
  countInSeconds: 3,
  gridSeconds: 5,
} as const;
