/** The states of a plan, as screens say them. */
export const STATE_WORDS = {
  "in-writing": "in writing",
  "handed-in": "handed in",
  "handed-back": "handed back",
  "signed-off": "signed off",
} as const;
