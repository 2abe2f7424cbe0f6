/** The passage read aloud to measure a coach's rate: class talk of our own, each line as long as a typical cue line. */
export const PASSAGE: readonly string[] = [
  "Good morning, and welcome to the harbour room.",
  "Bring the carriage home, leave one light spring on, and kneel in the middle.",
  "Take a handle in each hand and let your shoulders settle.",
  "We begin on the next breath out: pull slowly, elbows close to the ribs.",
  "Breathe in as the carriage rolls home, and breathe out as you draw it away.",
  "Keep your neck long and your belly quiet; nothing but the arms should move.",
  "If your knees complain, put a pad under them or stand for this one.",
  "If it feels too easy, move a little further from the anchor.",
  "Feel the work between your shoulder blades, not in the front of the neck.",
  "Next is a plank, with the spring as it is and the handles down.",
  "Only a few more, smooth and even, all the way out and all the way back.",
  "Three, two, one, and rest.",
];
