/** What is said: how much of each item's time is talk, when the coach speaks, what the crew reads. */
import type { AsRead } from "#lib/cues/as-read.ts";
import type { CueTrack } from "#lib/cues/types.ts";
import { percent } from "#lib/formats/percent.ts";
import { plainNumber, plural, secondsWords } from "#lib/plan/format.ts";
import { cellOf } from "./columns.ts";
import type { LaneMove } from "./setup-lanes.ts";
import type { CrewCell, Lane, TalkCell, VoiceCell } from "./types.ts";

/** `shares`: talk divided by the time available, by item id; no entry for items without talk. */
export function talkLane(moves: readonly LaneMove[], shares: Readonly<Record<string, number>>): Lane {
  const cells = moves.flatMap((p): TalkCell[] => {
    const share = Object.hasOwn(shares, p.item.id) ? shares[p.item.id] : undefined;
    return share === undefined ? [] : [{ ...cellOf(p, talkWords(share, p), true), share }];
  });
  return { id: "talk", kind: "talk", name: "Talk", cells };
}

function talkWords(share: number, { column }: LaneMove): string {
  const room = column.to - column.gapFrom;
  if (!Number.isFinite(share)) return "lines to say but no time for them";
  const over = share > 1 ? `, ${plainNumber((share - 1) * room)} s more than fits` : "";
  return `its lines fill ${percent(share)} of ${secondsWords(Math.round(room))}${over}`;
}

export function voiceLane(moves: readonly LaneMove[], track: CueTrack): Lane {
  const said = byItem(track.cues);
  const lost = byItem(track.dropped);
  const cells = moves.flatMap((p): VoiceCell[] => {
    const cues = said.get(p.item.id) ?? [];
    const dropped = lost.get(p.item.id)?.length ?? 0;
    if (cues.length === 0 && dropped === 0) return [];
    const spans = cues.map(({ from, to, kind }, n) => ({ key: String(n), from, to, call: isCall(kind) }));
    return [{ ...cellOf(p, voiceWords(spans, dropped), true), spans, dropped }];
  });
  return { id: "voice", kind: "voice", name: "Coach speaks", cells };
}

function byItem<T extends { readonly item: string }>(all: readonly T[]): Map<string, T[]> {
  const map = new Map<string, T[]>();
  for (const one of all) {
    const held = map.get(one.item);
    if (held) held.push(one);
    else map.set(one.item, [one]);
  }
  return map;
}

const isCall = (kind: CueTrack["cues"][number]["kind"]): boolean => kind === "heads-up" || kind === "count-in";

function voiceWords(spans: VoiceCell["spans"], dropped: number): string {
  const seconds = spans.reduce((sum, span) => sum + span.to - span.from, 0);
  const lost = dropped > 0 ? `, ${plural(dropped, "line")} set aside` : "";
  return `coach speaks ${plural(spans.length, "time")}, ${secondsWords(Math.round(seconds))}${lost}`;
}

/** Lines for crew and demonstrator: read, not spoken, and due from the start of their move. */
export function crewLane(moves: readonly LaneMove[], asRead: AsRead): Lane {
  const cells = moves.flatMap((p): CrewCell[] => {
    const lines = (p.item.script ?? [])
      .filter((line) => line.kind === "crew")
      .map((line) => asRead(p.item, line.text).trim());
    const text = lines.filter(Boolean).join(" / ");
    return text === "" ? [] : [{ ...cellOf(p, `crew: ${text}`), text }];
  });
  return { id: "crew", kind: "crew", name: "Crew, demonstrator", cells };
}
