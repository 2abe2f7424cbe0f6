/** Who reads a plan that is offered, for whoever wants to take it back. Pure. */
import type { Present, StateNews } from "#lib/protocol/messages.ts";

interface ReaderNow {
  readonly name: string;
  /** Since when they have taken it up, ms since the epoch; null for one who only has it open. */
  readonly since: number | null;
}

interface Known {
  readonly state: StateNews;
  readonly present: readonly Present[];
}

/** The lead who took it up, then everybody who has it open without writing in it. */
export function readersNow({ state: { round }, present }: Known, me: string): readonly ReaderNow[] {
  const lead = round?.reader && round.reader.id !== me ? round.reader : null;
  const open = present.filter(({ userId, writes }) => !writes && userId !== me && userId !== lead?.id);
  const others = open.map(({ name }) => ({ name, since: null }));
  return lead ? [{ name: lead.name, since: round?.since ?? null }, ...others] : others;
}
