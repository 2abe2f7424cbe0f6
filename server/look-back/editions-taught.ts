/** The editions that classes were taught from, each read once. */
import type { Card } from "#lib/card/schema.ts";
import type { ClassLog } from "#lib/floor/class-log-schema.ts";
import { type GroupSeconds, plannedGroups, type TaughtEnd, taughtEnd, taughtGroups } from "#lib/look-back/taught.ts";
import { type EditionReader, readSoundEdition } from "#server/editions/sound-edition.ts";

export class EditionsTaught {
  private readonly cards = new Map<string, Card | undefined>();
  private readonly planned = new Map<Card, GroupSeconds>();

  constructor(private readonly app: EditionReader) {}

  /** Undefined for one that is not what was signed any more. */
  cardOf({ planId, number }: ClassLog["edition"]): Card | undefined {
    const key = `${planId}/${number}`;
    if (!this.cards.has(key)) {
      const edition = readSoundEdition(this.app, planId, number);
      this.cards.set(key, edition === "damaged" ? undefined : edition?.card.card);
    }
    return this.cards.get(key);
  }

  /** Without its edition only a class that ran to its end is known to have been taught. */
  endOf(log: ClassLog): TaughtEnd {
    return taughtEnd(log, this.cardOf(log.edition)?.clock.total ?? 0);
  }

  plannedGroupsOf(edition: ClassLog["edition"]): GroupSeconds {
    const card = this.cardOf(edition);
    if (!card) return {};
    const groups = this.planned.get(card) ?? plannedGroups(card.plan);
    this.planned.set(card, groups);
    return groups;
  }

  taughtGroupsOf(log: ClassLog): GroupSeconds {
    const card = this.cardOf(log.edition);
    return card ? taughtGroups(card.plan, log) : {};
  }
}
