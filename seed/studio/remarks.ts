/** The demo studio's stock remarks, invented. Each belongs to a rule, to a move, or to neither. */
export interface SeedRemark {
  readonly words: string;
  readonly rule?: string;
  readonly move?: string;
}

export const STOCK_REMARKS: readonly SeedRemark[] = [
  { words: "Say it once, then be quiet and let them work." },
  { words: "Good. I would keep it exactly as it is." },
  { words: "Read this aloud with a watch: it takes longer than it looks." },
  { words: "Which of the two did you mean? The plan and the words say different things.", rule: "says-otherwise" },
  { words: "Give the change its time: nobody hears a cue while they move springs.", rule: "transition-too-short" },
  {
    words: "Put the new springs into the words before the start line, in the order in which hands reach them.",
    rule: "change-not-told",
  },
  { words: "Give the other side the same time, or say in the notes why not.", rule: "uneven-sides" },
  { words: "Offer the easier way first here. Whoever wants more will find it.", rule: "caution-without-easier" },
  {
    words: "Use a live field for the seconds, so that the words stay right when the time changes.",
    rule: "typed-number-that-could-be-live",
  },
  { words: "Let the elbows follow the ribs. Say where they go, not where they should not.", move: "row-kneeling" },
];
