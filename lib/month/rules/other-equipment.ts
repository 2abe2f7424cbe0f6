import { defineMonthRule, OWN_FACTS } from "../define/define-month-rule.ts";
import { oneClass } from "../define/one-class.ts";
import { startWords } from "../define/words.ts";

export const otherEquipment = defineMonthRule({
  id: "other-equipment",
  of: "slot",
  title: "A plan is for other machines than the room has",
  why: "Springs, travel and set-ups of the plan do not fit what stands in the room.",
  fix: "Choose a plan for this room's machines, or another room.",
  level: "must",
  source: OWN_FACTS,
  limits: [],
  check({ one, room }) {
    if (!room || !one.plan || one.plan.equipment === room.equipment) return [];
    return [oneClass(one, { plan: one.plan.equipment, room: room.equipment })];
  },
  say: ({ values }, { one, room }) =>
    `${startWords(one)}: ${one.plan?.title} is for ${values.plan}; ${room?.name} has ${values.room}. Choose another plan or room.`,
});
