/** What the crew reads during a class: its lines and when they are due, and how long the coach speaks or is silent. */
import { readerOf } from "#lib/cues/as-read.ts";
import type { FloorNow } from "#lib/floor/now.ts";
import { itemName } from "#lib/plan/format.ts";
import { headSeconds, isMoveItem } from "#lib/plan/lookup.ts";

interface CrewLine {
  readonly item: string;
  readonly name: string;
  readonly text: string;
  /** Seconds until its move starts; 0 or less during the move. */
  readonly inSeconds: number;
}
export interface CrewCalls {
  readonly now: readonly CrewLine[];
  /** Soonest first. */
  readonly next: readonly CrewLine[];
  /** Seconds until the next change or the closing; during a change, until the one after it. Null when there is none. */
  readonly changeIn: number | null;
  /** Whether the coach speaks now, and for how many more seconds that holds; null when nothing more is said. */
  readonly voice: { readonly speaks: boolean; readonly seconds: number | null };
}

/** How many lines are shown before they are due. */
const AHEAD = 4;

/** `position`: seconds of the class in force. */
export function crewSheet({ plan, clock, cues }: FloorNow, position: number): CrewCalls {
  const rows = new Map(clock.rows.map((row) => [row.item, row]));
  const asRead = readerOf(plan, clock);
  const lines = plan.items.filter(isMoveItem).flatMap((item): (CrewLine & { readonly ends: number })[] => {
    const row = rows.get(item.id);
    const texts = (item.script ?? [])
      .filter(({ kind }) => kind === "crew")
      .map(({ text }) => asRead(item, text).trim());
    if (!row) return [];
    const name = itemName(plan, item);
    return texts
      .filter(Boolean)
      .map((text) => ({ item: item.id, name, text, inSeconds: row.start - position, ends: row.end }));
  });
  const told = lines.map(({ ends: _ends, ...line }) => line);
  return {
    now: told.filter((line, n) => line.inSeconds <= 0 && (lines[n]?.ends ?? 0) > position),
    next: told.filter((line) => line.inSeconds > 0).slice(0, AHEAD),
    changeIn: changeIn({ plan, clock }, position),
    voice: voiceAt(cues, position),
  };
}

/** The opening ends with the first change, work and pauses with the next one. */
function changeIn({ plan, clock }: Pick<FloorNow, "plan" | "clock">, position: number): number | null {
  const headings = new Set(plan.items.filter(({ kind }) => kind === "heading").map(({ id }) => id));
  const rows = clock.rows.filter(({ item }) => !headings.has(item));
  const opening = headSeconds(plan, "openingSeconds");
  const next = position < opening && rows.length > 0 ? opening : rows.find(({ end }) => end > position)?.end;
  return next === undefined ? null : next - position;
}

/** Lines closer together than a breath are one stretch of talk. Seconds. */
const BREATH = 1;

function voiceAt(cues: FloorNow["cues"], position: number): CrewCalls["voice"] {
  const ahead = cues.filter(({ to }) => to > position);
  const first = ahead[0];
  if (!first) return { speaks: false, seconds: null };
  if (first.from > position) return { speaks: false, seconds: first.from - position };
  let until = first.to;
  for (const cue of ahead) if (cue.from <= until + BREATH) until = Math.max(until, cue.to);
  return { speaks: true, seconds: until - position };
}
