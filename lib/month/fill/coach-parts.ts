/** How long a coach talks on a day: the only finding of coaches that depends on the plan. */
import { NOISE } from "#lib/numbers/round.ts";
import { limitsOfMonth } from "../types.ts";
import { type Costing, type CostPart, type Place, scopeOf, valuesOf } from "./parts.ts";

export function coachParts({ month, places, costOfRule }: Costing): CostPart[] {
  const flat = costOfRule("coach-talks-long");
  if (flat === 0) return [];
  const days = new Map<string, Place[]>();
  for (const place of places) {
    const { coach } = place.one.slot;
    if (!coach) continue;
    const key = `${coach} ${place.one.date}`;
    days.set(key, [...(days.get(key) ?? []), place]);
  }
  const most = limitsOfMonth(month).coachTalkSecondsDay + NOISE;
  return [...days.values()].flatMap((day) => talkPart(day, most, flat));
}

function talkPart(day: readonly Place[], limit: number, flat: number): CostPart[] {
  const scope = scopeOf(day);
  const talk = valuesOf(day, ({ talkSeconds }) => talkSeconds);
  if (scope.length === 0 || talk.most.reduce((a, b) => a + b, 0) <= limit) return [];
  return [
    {
      scope,
      flat,
      cost: (picks) => {
        let seconds = 0;
        for (let i = 0; i < day.length; i++) seconds += talk.of(i, picks);
        return seconds > limit ? flat : 0;
      },
    },
  ];
}
