/** Acts of the desk that are asked about first: what will happen, and both answers. */
interface ActWords {
  readonly act: string;
  readonly ask: string;
  readonly sure: string;
}

const TO_TEAM = {
  act: "Share with the team",
  ask: "Every coach and lead of the studio will see this plan and may write in it; trainees will not. You can stop sharing it later.",
  sure: "Share it",
  keep: "Keep it to yourself",
};
const FROM_TEAM = {
  act: "Stop sharing with the team",
  ask: "Coaches will no longer see this plan, except those it was shared with by name. Leads still read it.",
  sure: "Stop sharing",
  keep: "Keep sharing",
};

/** `team`: whether it is the team's now. */
export const teamWords = (team: boolean): ActWords & { readonly keep: string } => (team ? FROM_TEAM : TO_TEAM);

export const ARCHIVE_WORDS: ActWords = {
  act: "Archive",
  ask: "The plan leaves your desk; its signed editions stay in use. You can bring it back from Archived.",
  sure: "Archive it",
};
export const DELETE_WORDS: ActWords = {
  act: "Delete",
  ask: "The plan goes from everybody’s desk. You can bring it back from Deleted.",
  sure: "Delete it",
};
