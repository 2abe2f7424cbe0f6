/** Goes to the line that the page's address names, as soon as the plan has its item. */
import { goToLine } from "#app/_session/go-to-line.ts";
import type { PlanSession } from "#app/_session/session.ts";
import { itemById } from "#lib/plan/lookup.ts";
import { placeOfLineAddress } from "#lib/protocol/places.ts";

/** A plan on its way from the server or from this device. */
const WAIT_MS = 10_000;

export function goToNamedLine(session: PlanSession, show: (itemId: string) => void): void {
  const place = placeOfLineAddress(location.hash);
  if (!place) return;
  const { itemId, line } = place;
  const go = () => {
    if (itemById(session.getSnapshot().plan, itemId) === undefined) return false;
    show(itemId);
    if (line !== null) goToLine(session, itemId, line);
    return true;
  };
  if (go()) return;
  const stop = session.subscribe(() => {
    if (go()) end();
  });
  const late = setTimeout(() => end(), WAIT_MS);
  const end = () => {
    clearTimeout(late);
    stop();
  };
}
