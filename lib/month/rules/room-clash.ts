import { overlaps } from "../define/clashes.ts";
import { defineMonthRule, OWN_FACTS } from "../define/define-month-rule.ts";
import { hoursWords, startWords } from "../define/words.ts";

export const roomClash = defineMonthRule({
  id: "room-clash",
  of: "room",
  title: "Two classes are in one room at the same time",
  why: "Two groups stand before the same machines.",
  fix: "Move one of them to another time or room.",
  level: "must",
  source: OWN_FACTS,
  limits: [],
  check: ({ id, classes }) => overlaps(id, classes),
  say: ({ classes: [a, b], values }, { room }) =>
    `${room.name}: ${startWords(a)} and ${startWords(b)} overlap by ${hoursWords(values.minutes)}. Move one to another time or room.`,
});
