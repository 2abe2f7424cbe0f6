/** Where the line over the plan leads for talk: the part of the class's panel that says what it is made of. */
export const TALK_PART = "talk-part";
