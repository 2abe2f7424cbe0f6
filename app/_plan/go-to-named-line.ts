/** Goes to the line that the page's address names, as soon as the plan has its item, and marks it for a moment. */

import { showFound } from "#app/_parts/show-found.ts";
import { goToLine } from "#app/_session/go-to-line.ts";
import type { PlanSession } from "#app/_session/session.ts";
import { itemById } from "#lib/plan/lookup.ts";
import { type ClassField, type NamedLine, placeOfLineAddress } from "#lib/protocol/places.ts";
import { focusMiddle } from "./focus.ts";
import { CLASS_WORDS } from "./panel/panel-words.ts";

/** A plan on its way from the server or from this device. */
const WAIT_MS = 10_000;
/** What was opened is drawn a few frames later. */
const FRAMES = 60;

type Show = (itemId: string | null) => void;

export function goToNamedLine(session: PlanSession, show: Show): void {
  const place = placeOfLineAddress(location.hash);
  if (!place) return;
  if (go(session, place, show)) return;
  const stop = session.subscribe(() => {
    if (go(session, place, show)) end();
  });
  const late = setTimeout(() => end(), WAIT_MS);
  const end = () => {
    clearTimeout(late);
    stop();
  };
}

/** False while the plan does not have the place yet. */
function go(session: PlanSession, place: NamedLine, show: Show): boolean {
  if ("field" in place) {
    show(null);
    whenDrawn(
      () => fieldElement(place.field),
      (field) => showField(field, place.line),
    );
    return true;
  }
  const { itemId, line } = place;
  if (itemById(session.getSnapshot().plan, itemId) === undefined) return false;
  show(itemId);
  whenDrawn(
    () => document.getElementById(`rail-${itemId}`) ?? document.querySelector(GRID_PLACE),
    (plate) => {
      // The editor of a line has the last word, whenever it comes.
      if (line === null || document.activeElement === document.body) focusMiddle(itemId);
      if (line === null) showFound(() => document.getElementById(`rail-${itemId}`) ?? plate);
    },
  );
  if (line !== null) goToLine(session, itemId, line);
  return true;
}

/** What takes the keyboard where the plan is not on its rail. */
const GRID_PLACE = ':is([role="grid"], [data-reading]) [tabindex="0"]';

const fieldElement = (field: ClassField) =>
  document.querySelector<HTMLInputElement | HTMLTextAreaElement>(`[data-shared][aria-label="${CLASS_WORDS[field]}"]`);

function showField(field: HTMLInputElement | HTMLTextAreaElement, line: number): void {
  const before = field.value.split("\n").slice(0, line);
  const from = before.join("\n").length + (line > 0 ? 1 : 0);
  const to = field.value.indexOf("\n", from);
  field.focus({ preventScroll: true });
  field.setSelectionRange(from, to < 0 ? field.value.length : to);
  field.scrollIntoView({ block: "center" });
  showFound(() => field);
}

function whenDrawn<E extends Element>(find: () => E | null, then: (element: E) => void, frames = FRAMES): void {
  requestAnimationFrame(() => {
    const element = find();
    if (element) then(element);
    else if (frames > 0) whenDrawn(find, then, frames - 1);
  });
}
