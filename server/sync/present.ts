/** The list of people in a room, as its pages receive it. */
import type { Present } from "#lib/protocol/messages.ts";
import type { PageConnection } from "./page-connection.ts";

/** One entry per person, however many pages they have open. */
export function peopleOf(connections: Iterable<PageConnection>): Present[] {
  const people = new Map<string, Present>();
  for (const { session, access } of connections) {
    const writes = access.writes || people.get(session.userId)?.writes === true;
    people.set(session.userId, { userId: session.userId, name: session.name, writes });
  }
  return [...people.values()].sort((a, b) => (a.userId < b.userId ? -1 : 1));
}
