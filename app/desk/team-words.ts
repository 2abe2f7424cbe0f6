/** Words of making a plan the team's, and of taking that back: who will read and write it. */
export interface TeamWords {
  readonly act: string;
  readonly ask: string;
  readonly sure: string;
  readonly keep: string;
}

const TO_TEAM: TeamWords = {
  act: "Share with the team",
  ask: "Every coach and lead of the studio will see this plan and may write in it; trainees will not. You can take it back.",
  sure: "Share it",
  keep: "Keep it to yourself",
};
const FROM_TEAM: TeamWords = {
  act: "Stop sharing with the team",
  ask: "Coaches will no longer see this plan, except those it was shared with by name. Leads still read it.",
  sure: "Stop sharing",
  keep: "Go on sharing",
};

/** `team`: whether it is the team's now. */
export const teamWords = (team: boolean): TeamWords => (team ? FROM_TEAM : TO_TEAM);
