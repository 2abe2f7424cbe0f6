/** Turns a library filter into an address query and back, so that it is kept when going to a move and back. */
import { GROUPS, MOVE_CAUTIONS, PATTERNS, POSITIONS, STATIONS } from "#lib/plan/schema.ts";
import { type LibraryFilter, NO_FILTER, type SpringChoice } from "./search.ts";

/** "?q=row&trains=chest&without=kneeling.supine"; empty without a filter. */
export function filterToQuery(filter: LibraryFilter): string {
  const pairs: readonly (readonly [string, string])[] = [
    ["q", filter.text.trim()],
    ["trains", filter.group],
    ["pattern", filter.pattern],
    ["position", filter.position],
    ["station", filter.station],
    ["springs", filter.springs],
    ["asks", filter.asks],
    ["without", filter.without.join(".")],
  ];
  const query = new URLSearchParams(pairs.filter(([, value]) => value !== "").map(([key, value]) => [key, value]));
  return query.size === 0 ? "" : `?${query}`;
}

/** `read` returns the value of a key. Words this version does not know are skipped. */
export function filterFromQuery(read: (key: string) => string | null | undefined): LibraryFilter {
  const one = <T extends string>(key: string, known: readonly T[]): T | "" =>
    known.find((value) => value === read(key)) ?? "";
  const without = (read("without") ?? "").split(".");
  return {
    ...NO_FILTER,
    text: (read("q") ?? "").slice(0, 200),
    group: one("trains", GROUPS),
    pattern: one("pattern", PATTERNS),
    position: one("position", POSITIONS),
    station: one("station", STATIONS),
    springs: springChoice(read("springs") ?? ""),
    asks: one("asks", MOVE_CAUTIONS),
    without: MOVE_CAUTIONS.filter((tag) => without.includes(tag)),
  };
}

function springChoice(text: string): SpringChoice {
  if (text === "bodyweight") return text;
  const match = /^(takes|needs) ([a-z0-9][a-z0-9-]{0,63})$/.exec(text);
  if (!match) return "";
  return match[1] === "takes" ? `takes ${match[2]}` : `needs ${match[2]}`;
}
