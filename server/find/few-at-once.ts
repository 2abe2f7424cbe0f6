/**
 * Searching is asked for as one types, so only the newest of a person's questions are worth an answer. Those that wait behind newer ones
 * are refused unread, and a flood of them costs other people nothing.
 */
import type { Person } from "#lib/policy/can.ts";
import { fail, type Result } from "#server/base/result.ts";

/** Newer ones that a question may have behind it: several pages of one person may be asking. Our own choice. */
const MOST_NEWER = 4;

interface Asked {
  readonly actor: Person;
  readonly request: Request;
}

const newest = new Map<string, number>();
const places = new WeakMap<Request, number>();

/** For `first` of a route: notes that it has arrived. */
export function arrives({ actor, request }: Asked): undefined {
  const place = (newest.get(actor.id) ?? 0) + 1;
  newest.set(actor.id, place);
  places.set(request, place);
}

/** Once its turn has come. Errors: 429 overtaken. */
export function refuseOvertaken({ actor, request }: Asked): Result<never> | undefined {
  const newer = (newest.get(actor.id) ?? 0) - (places.get(request) ?? 0);
  return newer > MOST_NEWER ? OVERTAKEN : undefined;
}

const OVERTAKEN = fail(
  429,
  "overtaken",
  "You have searched for other words since. Type them again if nothing is shown.",
);
