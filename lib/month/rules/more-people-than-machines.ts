import { agree, plural } from "#lib/plan/format.ts";
import { defineMonthRule, OWN_FACTS } from "../define/define-month-rule.ts";
import { oneClass } from "../define/one-class.ts";
import type { SlotPart } from "../define/parts.ts";
import { startWords } from "../define/words.ts";

export const morePeopleThanMachines = defineMonthRule({
  id: "more-people-than-machines",
  of: "slot",
  title: "More people come than there are machines",
  why: "Somebody has no machine and has to be sent home.",
  fix: "Choose a larger room, or move some of the people to another class.",
  level: "must",
  source: OWN_FACTS,
  limits: [],
  check(part) {
    const [people, machines] = [peopleOf(part), part.room?.machines];
    if (people === undefined || machines === undefined || people <= machines) return [];
    return [oneClass(part.one, { people, machines })];
  },
  say: ({ values: { people, machines } }, { one, room }) =>
    `${startWords(one)}: ${plural(people, "person", "people")} and ${plural(machines, "machine")} in ${room?.name}. ${agree(people - machines, "One machine is", "Machines are")} missing: choose a larger room.`,
});

/** Undefined where neither the slot nor its regulars say how many. */
function peopleOf({ one, regulars }: SlotPart): number | undefined {
  if (one.slot.people !== undefined) return one.slot.people;
  const said = regulars.flatMap(({ people }) => people ?? []);
  return said.length > 0 ? said.reduce((sum, n) => sum + n, 0) : undefined;
}
