"use client";
/** Where the keyboard goes on a plan's page when something opens, closes or takes another's place. */
import { useEffect, useRef } from "react";
import { LATE, LATE_VIEW } from "./late-parts.ts";
import type { PlanView } from "./use-plan-view.ts";

const WORDS = '[role="textbox"][contenteditable="true"]';
/** How long the editor of a plate that opens is waited for, ms. */
const EDITOR_MS = 1000;

/** To the first field of the panel, else to the panel itself. */
export function focusPanel(panel: HTMLElement | null): void {
  (panel?.querySelector<HTMLElement>("[data-first]") ?? panel)?.focus();
}

/** To the words of the item whose plate has opened; to the plate until its editor is here. */
export function focusPlate(plate: HTMLElement | null): void {
  if (!plate) return;
  const first = plate.querySelector<HTMLElement>(WORDS) ?? plate.querySelector<HTMLElement>("[data-first]");
  if (first) focusInPlate(first);
  else focusWordsSoon(plate);
}

/** The rail brings the plate's head into view, so a field is scrolled to only where the screen does not show it then. */
function focusInPlate(field: HTMLElement): void {
  field.focus({ preventScroll: true });
  requestAnimationFrame(() => {
    if (field.getBoundingClientRect().top > innerHeight) field.scrollIntoView({ block: "nearest" });
  });
}

function focusWordsSoon(panel: HTMLElement): void {
  panel.focus({ preventScroll: true });
  const seen = new MutationObserver(() => {
    const words = panel.querySelector<HTMLElement>(WORDS);
    if (!words) return;
    seen.disconnect();
    // Unless the keyboard has gone on meanwhile.
    if (document.activeElement === panel) focusInPlate(words);
  });
  seen.observe(panel, { childList: true, subtree: true });
  setTimeout(() => seen.disconnect(), EDITOR_MS);
}

/** Into a new comment on what the panel shows. */
export function startComment(panel: HTMLElement | null): void {
  panel?.querySelector<HTMLElement>("[data-comment]")?.click();
}

/** To the chosen item on the rail, or to the one that takes the keyboard; in another view to the cell or line that takes the keyboard. */
export function focusMiddle(id: string | null): void {
  const cell = document.querySelector<HTMLElement>(
    ':is([role="grid"], [data-reading]) [tabindex="0"], [data-rounds] h2',
  );
  if (cell) cell.focus();
  else if (id === null) focusRail();
  // The rail itself brings a chosen plate into view.
  else document.getElementById(`rail-${id}`)?.focus({ preventScroll: true });
}

const START = `:is([role="grid"], [data-reading]) [tabindex="0"], [data-rounds] h2, [role="listbox"]:is([tabindex="0"], :has([tabindex="0"]))`;

/**
 * The keyboard begins in the plan, where arrows walk and one key adds, unless somebody has it elsewhere by then. What the address
 * names takes it from there.
 */
export function useFocusAtStart(view: PlanView): void {
  const begun = useRef(false);
  useEffect(() => {
    if (begun.current) return;
    begun.current = true;
    const go = () => {
      const list = document.querySelector<HTMLElement>(START);
      const place = list?.querySelector<HTMLElement>('[tabindex="0"]') ?? list;
      if (place && isFree()) focusQuietly(place);
    };
    whenViewIsHere(view, () => requestAnimationFrame(go));
  }, [view]);
}

/** Nobody writes, chooses, marks words or answers a dialog. */
const isFree = (): boolean =>
  (document.activeElement ?? document.body) === document.body &&
  document.querySelector("dialog[open]") === null &&
  document.getSelection()?.isCollapsed !== false;

/** In a page that nobody has touched yet, browsers draw the ring for a mouse as well: it is left out until a key is pressed. */
function focusQuietly(place: HTMLElement): void {
  if (!navigator.userActivation.hasBeenActive) {
    place.dataset.quiet = "";
    const seen = () => {
      delete place.dataset.quiet;
    };
    addEventListener("keydown", seen, { once: true, capture: true });
    place.addEventListener("blur", seen, { once: true });
  }
  place.focus({ preventScroll: true });
}

function focusRail(): void {
  const list = document.querySelector<HTMLElement>('[role="listbox"]');
  (list?.querySelector<HTMLElement>('[tabindex="0"]') ?? list)?.focus();
}

/** After a key has changed the view: into the new view, as soon as it is here. */
export function useFocusKept(view: PlanView): void {
  const before = useRef(view);
  useEffect(() => {
    if (before.current === view) return;
    before.current = view;
    if (document.activeElement !== document.body) return;
    const chosen = document.querySelector<HTMLElement>('[role="listbox"] [tabindex="0"]');
    let left = false;
    const goOn = () => {
      if (!left && document.activeElement === document.body) focusMiddle(chosen?.dataset.item ?? null);
    };
    whenViewIsHere(view, () => requestAnimationFrame(goOn));
    return () => {
      left = true;
    };
  }, [view]);
}

/** Into the rounds of reading, which the menu opens: it would keep the keyboard. */
export function focusRounds(): void {
  const go = () => document.querySelector<HTMLElement>("[data-rounds] h2")?.focus();
  whenViewIsHere("rounds", () => requestAnimationFrame(() => requestAnimationFrame(go)));
}

const NOTHING = () => undefined;

/** Runs `then` at once when the view is here, or when its late part has come. */
function whenViewIsHere(view: PlanView, then: () => void): void {
  const part = view === "rail" ? null : LATE[LATE_VIEW[view]];
  if (!part || part.here !== null) then();
  // The page draws the part in a step of its own after it has come. A part that does not come shows that itself.
  else part.fetch().then(() => requestAnimationFrame(then), NOTHING);
}
