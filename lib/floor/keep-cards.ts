/** Which cue cards a device keeps when new ones arrive: a good new one, else the last good one. */
import type { CardEnvelope } from "#lib/card/schema.ts";
import { verifyCard } from "#lib/card/verify-card.ts";
import { FLOOR_SENTENCES } from "./floor-sentences.ts";

/** A card as the device keeps it: the envelope as received, since it is verified again whenever it is opened. */
export interface KeptCard {
  readonly planId: string;
  readonly envelope: CardEnvelope;
  /** ms since the epoch, by the device's clock. */
  readonly keptAt: number;
}

/** An edition that a lead took out of use. Times in ms since the epoch. */
export interface WithdrawnCard {
  readonly planId: string;
  readonly number: number;
  readonly byName: string;
  readonly at: number;
  readonly reason: string;
}

/** The withdrawal of this edition; undefined while it may be started. */
export const withdrawnOf = (
  edition: { readonly planId: string; readonly number: number },
  withdrawn: readonly WithdrawnCard[] = [],
): WithdrawnCard | undefined =>
  withdrawn.find(({ planId, number }) => planId === edition.planId && number === edition.number);

export interface Refused {
  readonly title: string;
  readonly reason: string;
  /** True when an earlier, good card of the same plan is still kept. */
  readonly earlierKept: boolean;
}

/** What is left of a withdrawn edition once its card is deleted: enough to say which one it was. */
export interface DroppedCard {
  readonly planId: string;
  readonly number: number;
  readonly title: string;
}

export interface KeptAfter {
  readonly kept: readonly KeptCard[];
  readonly dropped: readonly DroppedCard[];
  readonly refused: readonly Refused[];
}

/** The plan and title that an unverified card claims. */
function claimOf(envelope: unknown): { planId: string | null; title: string } {
  const edition = field(field(envelope, "card"), "edition");
  const planId = field(edition, "planId");
  const title = field(edition, "title");
  return { planId: typeof planId === "string" ? planId : null, title: typeof title === "string" ? title : "A card" };
}

const field = (value: unknown, name: string): unknown =>
  typeof value === "object" && value !== null && name in value
    ? Object.entries(value).find(([k]) => k === name)?.[1]
    : null;

/**
 * Keeps what verifies under the studio's key. A card that fails, or is older than the kept one, is refused with a reason
 * and the kept one stays. Plans that the studio no longer sends are dropped, unless a refused card belongs to no known
 * plan: it may stand for any of them. A withdrawn card cannot be started any more; it is deleted once no class that had
 * begun with it can still run, on this screen or on one that this one follows.
 */
export function keepCards(
  before: readonly KeptCard[],
  fetched: readonly unknown[],
  trust: { readonly publicKey: string; readonly now: number },
  withdrawn: readonly WithdrawnCard[] = [],
  droppedBefore: readonly DroppedCard[] = [],
): KeptAfter {
  const good = new Map<string, KeptCard>();
  const stays = new Set<string>();
  const refused: Refused[] = [];
  let unknown = false;
  for (const envelope of fetched) {
    const claim = claimOf(envelope);
    const earlier = before.find((card) => card.planId === claim.planId);
    const verdict = verifyCard(envelope, trust.publicKey, trust.now);
    const older = verdict.ok && earlier && verdict.card.edition.number < earlier.envelope.card.edition.number;
    if (verdict.ok && !older) {
      const { planId } = verdict.card.edition;
      // Verified above, so it has this shape.
      good.set(planId, { planId, envelope: envelope as CardEnvelope, keptAt: trust.now });
      continue;
    }
    if (earlier) stays.add(earlier.planId);
    else unknown ||= !verdict.ok;
    const reason = verdict.ok ? FLOOR_SENTENCES.olderEdition : verdict.reason;
    refused.push({ title: claim.title, reason, earlierKept: earlier !== undefined });
  }
  const old = before.filter(({ planId }) => !good.has(planId));
  const over = old.filter(({ envelope }) => isOver(withdrawnOf(envelope.card.edition, withdrawn), trust.now));
  const left = old.filter(
    (card) =>
      !over.includes(card) &&
      (unknown || stays.has(card.planId) || withdrawnOf(card.envelope.card.edition, withdrawn) !== undefined),
  );
  const still = droppedBefore.filter((one) => !good.has(one.planId) && withdrawnOf(one, withdrawn));
  return { kept: [...good.values(), ...left], dropped: dropped(over, still), refused };
}

const isOver = (out: WithdrawnCard | undefined, now: number): boolean =>
  out !== undefined && now - out.at > CLASS_OVER_MS;

/** Those whose cards are deleted now, then those from before; one of each plan. */
function dropped(over: readonly KeptCard[], before: readonly DroppedCard[]): DroppedCard[] {
  const now = over.map(({ planId, envelope: { card } }) => {
    return { planId, number: card.edition.number, title: card.edition.title };
  });
  return [...now, ...before.filter((one) => !now.some(({ planId }) => planId === one.planId))];
}

/** Three times the longest class. */
const CLASS_OVER_MS = 12 * 60 * 60_000;
