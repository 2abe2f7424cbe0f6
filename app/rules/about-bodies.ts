/** Rules whose finding is about what a class asks of a body: their pages show the words of care at once. */
const ABOUT_BODIES: ReadonlySet<string> = new Set([
  "caution-without-easier",
  "caution-without-safety-line",
  "expected-caution-unanswered",
  "group-without-rest",
  "hand-or-foot-not-free",
  "long-hold-without-breath",
  "one-way-spine",
  "push-pull-apart",
  "springs-changed-carriage-out",
  "springs-out-of-range",
  "too-light-to-be-steady",
  "transition-too-short",
  "wrists-without-rest",
]);

export const isAboutBodies = (ruleId: string): boolean => ABOUT_BODIES.has(ruleId);
