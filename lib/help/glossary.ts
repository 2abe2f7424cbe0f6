/**
 * What the product's words mean: one source for the glossary in help and the one in DEVELOPERS.md, which
 * `tests/unit/help/glossary.test.ts` compares. `_so_` marks words as they stand on screens.
 */

export interface GlossaryWord {
  /** One or several that belong together, with commas between. */
  readonly word: string;
  readonly means: string;
  /** What is not said instead, for contributors. */
  readonly not: string;
  /** What the guide says after it, for contributors. */
  readonly inCode?: string;
  /** For contributors alone: it stands on no screen, or means there what it means everywhere. */
  readonly inside?: true;
}

export const GLOSSARY: readonly GlossaryWord[] = [
  {
    word: "studio",
    means: "who runs the classes; has rooms, machines, a library, people",
    not: "house, gym",
    inside: true,
  },
  { word: "studio standards", means: "the studio's levels and limits for rules", not: "house standards" },
  { word: "record", means: "the list of what people with rights did, as a chain", not: "log, history" },
  {
    word: "head of the record",
    means: "the number and the hash of its last row; printed on every signed sheet",
    not: "",
    inside: true,
  },
  { word: "plan", means: "one class on paper", not: "class (that is what is given)" },
  { word: "item", means: "a row of a plan: a move, a pause or a heading", not: "row, entry" },
  { word: "block", means: "a heading and the items under it", not: "section" },
  {
    word: "move",
    means: "an entry of the library: how it is set up, what it trains, how it may be cued",
    not: "exercise",
  },
  { word: "set-up", means: "springs, station, position, facing, hands, feet", not: "" },
  {
    word: "change",
    means: "from one set-up to the next, on screens",
    inCode: "; in code and files `transition`",
    not: "transition on screens",
  },
  { word: "side, pair", means: "left, right, both, alternating; the left and the right item of one move", not: "" },
  { word: "length, time", means: "of a class against its slot; of an item", not: "duration" },
  {
    word: "formats",
    means: "how days, times, weeks, forces and lengths are written for one reader",
    not: "locale, preferences",
  },
  {
    word: "cue line",
    means: "one thing to say, of one kind: set-up, start, breath, form, focus, easier, harder, safety, crew",
    not: "note",
  },
  { word: "live field", means: "a word in a cue line that the plan fills in", not: "variable, placeholder" },
  { word: "cue track", means: "all lines of a class, placed in time, none over another", not: "" },
  { word: "heads-up, count-in", means: "the call before a change; the last seconds counted aloud", not: "" },
  {
    word: "finding",
    means: "what a rule found, as _must fix_, _look again_ or _for information_",
    not: "warning, error",
  },
  { word: "rule, limit", means: "one thing that is looked for; a number of it that a studio may set", not: "" },
  { word: "fix", means: "the one act that a finding offers; the sentence that says what to do", not: "mend, remedy" },
  { word: "caution", means: "what about a move needs care, against who is expected in the room", not: "risk" },
  { word: "wrist load", means: "the share of the body's weight on the hands", not: "weight on the wrists" },
  { word: "thread", means: "comments on one spot, _open_ or _settled_", not: "" },
  {
    word: "remark",
    means: "a stock sentence of the studio, put into a comment by typing; linked to a rule or a move",
    not: "template, snippet",
  },
  {
    word: "accepted finding",
    means: "a _look again_ that a lead accepted with a reason; it stands again when its values change",
    not: "dismissed, ignored",
  },
  { word: "proposal", means: "a change offered with a thread, _taken_ or _declined_", not: "", inside: true },
  {
    word: "proposal, part",
    means: "a change of a plate or an order that a lead offers, _taken_, _declined_ or _withdrawn_; one thing in it",
    not: "",
  },
  { word: "in writing, offered for reading, returned with notes, signed off", means: "the states of a plan", not: "" },
  {
    word: "round",
    means: "from offering a plan to its return, sign-off or being taken back; numbered 1, 2, ... in a plan",
    not: "",
  },
  { word: "moment", means: "a plan as it was at one step of a round", not: "", inside: true },
  { word: "main points", means: "up to three sentences of a return that matter most", not: "" },
  { word: "reader", means: "the lead who has taken a round up", not: "" },
  {
    word: "edition",
    means: "a plan, or a month, as it was signed, numbered 1, 2, ...",
    not: "signed class, card (on screens)",
  },
  {
    word: "origin",
    means: "the edition that a plan was made from, when one was used as a template",
    not: "",
    inside: true,
  },
  {
    word: "cue card",
    means: "the signed file of an edition that a device keeps; in code and on the wire",
    not: "card for anything else",
    inside: true,
  },
  { word: "take back", means: "put a plan that was offered for reading back in writing", not: "undo" },
  { word: "withdraw", means: "take an edition out of use", not: "take back" },
  { word: "undo", means: "take back one's own last act", not: "take back" },
  { word: "taken out", means: "an item marked as no longer in the plan; it can be put back", not: "deleted" },
  { word: "programme, slot", means: "a month of classes; one of them", not: "calendar, event" },
  { word: "regulars", means: "the same people, coming to several classes", not: "group (that is of muscles)" },
  {
    word: "heavy, recovery",
    means: "a day that works a muscle group hard; the time from one such day to the next",
    not: "load (that is in newtons)",
  },
  { word: "likeness", means: "how much two plans share, 0 to 1", not: "similarity" },
  { word: "fill", means: "put plans into a month's empty slots", not: "" },
  {
    word: "pattern, line",
    means: "the weekly pattern of a month; one entry of it, which gives classes on its days",
    not: "recurrence, series",
  },
  { word: "theme", means: "what a class promises to train, and how many of it a month promises", not: "category" },
  {
    word: "called off",
    means: "a class taken out of a month that people were told of; it stays, struck through",
    not: "cancelled (but in iCalendar)",
  },
  { word: "floor", means: "the live screen of a class", not: "player" },
  { word: "line", means: "what joins the screens of a room", not: "", inside: true },
  {
    word: "lead, follow",
    means: "a screen that moves the class; one that shows what the leader does",
    not: "(a lead is also a role: a mentor)",
  },
  { word: "class log", means: "what happened, item by item", not: "" },
  { word: "struck", means: "of a class log: not counted, for a reason that is kept", not: "deleted" },
  { word: "only begun", means: "a class that was ended before half of its plan", not: "failed" },
  {
    word: "notice",
    means: "one thing that somebody is told in the app, _new_ until it is seen",
    not: "notification, message, alert",
  },
  { word: "digest", means: "the one mail a day with all that is new for a person", not: "newsletter" },
  { word: "mail", means: "an e-mail that waits, was sent or has failed; e-mail is the way", not: "notification" },
  { word: "rehearsal", means: "the floor run with no class", not: "" },
  { word: "backup, schedule", means: "one file with the whole studio; what makes it every day", not: "dump" },
  { word: "device, pairing code", means: "a screen that belongs to a room; what makes it so", not: "" },
  { word: "host, place", means: "a machine's folder of studios; where a studio is on it", not: "", inside: true },
  { word: "fence", means: "the file that says that a studio is not here, moved or arriving", not: "", inside: true },
  { word: "find", means: "look for something by its words, from every page", not: "search (but in a list)" },
  {
    word: "word index",
    means: "the words of all plans, to find them by; thrown away and made anew at will",
    not: "",
    inside: true,
  },
];
