/** The states of a plan, as screens say them. */
export const STATE_WORDS = {
  "in-writing": "in writing",
  "handed-in": "offered for reading",
  "handed-back": "returned with notes",
  "signed-off": "signed off",
} as const;
