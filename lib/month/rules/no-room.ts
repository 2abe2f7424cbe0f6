import { defineMonthRule, OWN_FACTS } from "../define/define-month-rule.ts";
import { oneClass } from "../define/one-class.ts";
import { startWords } from "../define/words.ts";

export const noRoom = defineMonthRule({
  id: "no-room",
  of: "slot",
  title: "A class has no room",
  why: "Without a room nobody can see whether the machines are enough and of the right kind.",
  fix: "Choose a room.",
  level: "look",
  source: OWN_FACTS,
  limits: [],
  check: ({ one }) => (!one.slot.room ? [oneClass(one, {})] : []),
  say: (_, { one }) => `${startWords(one)} has no room. Choose one.`,
});
