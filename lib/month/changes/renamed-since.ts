/** What goes by another name than when a month was signed: it stands with every class that has it, though no class was changed. */

import { plural } from "#lib/plan/format.ts";
import { own } from "#lib/plan/lookup.ts";
import { expandMonth } from "../expand.ts";
import type { ById, MonthFile, MonthSlot } from "../types.ts";

export interface RenamedPart {
  /** Of its kind and its own: "theme/legs". */
  readonly id: string;
  /** "Theme Whole body is now called Legs: 17 classes." */
  readonly sentence: string;
}

interface Kind {
  readonly word: string;
  readonly all: (month: MonthFile) => ById<{ readonly name: string }> | undefined;
  readonly has: (slot: MonthSlot, id: string) => boolean;
}

const KINDS: Readonly<Record<string, Kind>> = {
  theme: { word: "Theme", all: ({ themes }) => themes, has: ({ theme }, id) => theme === id },
  regulars: {
    word: "Regulars",
    all: ({ regulars }) => regulars,
    has: ({ regulars = [] }, id) => regulars.includes(id),
  },
  room: { word: "Room", all: ({ rooms }) => rooms, has: ({ room }, id) => room === id },
};

/** Once each, themes first, with how many of the month's classes have it now; nothing of what none has. */
export function renamedSince(was: MonthFile, now: MonthFile): RenamedPart[] {
  const slots = expandMonth(now).filter(({ date, out }) => date >= now.dates.from && out !== true);
  return Object.entries(KINDS).flatMap(([kind, { word, all, has }]) =>
    Object.entries(all(now) ?? {}).flatMap(([id, { name }]): RenamedPart[] => {
      const before = own(all(was) ?? {}, id)?.name;
      const count = slots.filter((slot) => has(slot, id)).length;
      if (before === undefined || before === name || count === 0) return [];
      const called = [before, name].map((one) => one.trim() || "without a name");
      return [
        {
          id: `${kind}/${id}`,
          sentence: `${word} ${called[0]} is now called ${called[1]}: ${plural(count, "class", "classes")}.`,
        },
      ];
    }),
  );
}
