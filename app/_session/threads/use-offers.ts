"use client";
/** The list under a comment field: what it offers, which choice the keys are on, and taking one. */
import { type KeyboardEvent, type RefObject, useEffect, useLayoutEffect, useRef, useState } from "react";
import type { NamedPerson } from "#lib/margin/named.ts";
import type { Remark, RemarkPlace } from "#lib/remarks/match-remarks.ts";
import { type OfferedChoice, type Offers, offersAt, takeChoice } from "#lib/remarks/offers.ts";
import { fetchReaders, fetchRemarks } from "./thread-acts.ts";

interface FieldOffers {
  readonly planId: string;
  /** The person who writes: nobody names themselves. */
  readonly meId: string;
  readonly place: RemarkPlace;
  readonly field: RefObject<HTMLTextAreaElement | null>;
  readonly body: string;
  readonly setBody: (body: string) => void;
}

export interface OfferList {
  readonly offers: Offers | null;
  /** Index of the choice that the keys are on; -1 for none. */
  readonly chosen: number;
  /** After each change of the text or the caret. */
  look(): void;
  take(choice: OfferedChoice): void;
  /** True when the key was for the list. */
  onKey(event: KeyboardEvent): boolean;
  close(): void;
}

export function useOffers({ planId, meId, place, field, body, setBody }: FieldOffers): OfferList {
  const known = useKnown(planId);
  const [offers, setOffers] = useState<Offers | null>(null);
  const [chosen, setChosen] = useState(-1);
  /** Where Escape or a choice closed it: that part of the text does not open it again. */
  const closedAt = useRef<number | null>(null);
  const putCaret = useCaret(field);
  const show = (next: Offers | null) => {
    if (next === null || next.from !== offers?.from) setChosen(next ? 0 : -1);
    else setChosen(Math.min(chosen, next.choices.length - 1));
    setOffers(next);
  };
  const look = () => {
    const next = offersIn(field.current, known, { meId, place });
    if (next?.from !== closedAt.current) closedAt.current = null;
    show(next && closedAt.current === next.from ? null : next);
  };
  // What was typed before names and remarks had come.
  // biome-ignore lint/correctness/useExhaustiveDependencies: looked at again when they come
  useEffect(look, [known]);
  const close = () => {
    closedAt.current = offers?.from ?? null;
    setOffers(null);
  };
  const take = (choice: OfferedChoice) => {
    const taken = offers && field.current && takeChoice(body, field.current.selectionStart, offers, choice);
    if (!taken) return;
    setBody(taken.text);
    putCaret(taken.caret);
    close();
    field.current?.focus();
  };
  const onKey = keysOf({ offers, chosen, setChosen, take, close });
  return { offers, chosen, look, take, onKey, close };
}

/** Puts the caret where it belongs once the text has been drawn. */
function useCaret(field: FieldOffers["field"]): (caret: number) => void {
  const wanted = useRef<number | null>(null);
  useLayoutEffect(() => {
    if (wanted.current === null) return;
    field.current?.setSelectionRange(wanted.current, wanted.current);
    wanted.current = null;
  });
  return (caret) => {
    wanted.current = caret;
  };
}

function offersIn(
  element: HTMLTextAreaElement | null,
  known: Known,
  { meId, place }: Pick<FieldOffers, "meId" | "place">,
): Offers | null {
  if (!element || element.selectionStart !== element.selectionEnd) return null;
  const people = known.people.filter(({ id }) => id !== meId);
  return offersAt(element.value, element.selectionStart, { ...known, people, place });
}

interface KeyedList extends Pick<OfferList, "offers" | "chosen" | "take" | "close"> {
  readonly setChosen: (chosen: number) => void;
}

/** True when the key was for the list. */
const keysOf =
  ({ offers, chosen, setChosen, take, close }: KeyedList) =>
  (event: KeyboardEvent): boolean => {
    if (!offers || event.nativeEvent.isComposing || event.ctrlKey || event.metaKey || event.altKey) return false;
    const act = keyAct(event, offers.choices.length, chosen);
    if (act === null) return false;
    event.preventDefault();
    event.stopPropagation();
    const choice = offers.choices[chosen];
    if (act === "close") close();
    else if (act !== "take") setChosen(act);
    else if (choice) take(choice);
    return true;
  };

/** What a key does while the list is open: moves to a choice, takes it, closes the list; null: the key is the text's. */
function keyAct({ key, shiftKey }: KeyboardEvent, count: number, chosen: number): number | "take" | "close" | null {
  if (key === "Escape") return "close";
  if (shiftKey) return null;
  if (key === "ArrowDown") return (chosen + 1) % count;
  if (key === "ArrowUp") return chosen <= 0 ? count - 1 : chosen - 1;
  return (key === "Enter" || key === "Tab") && chosen >= 0 ? "take" : null;
}

interface Known {
  readonly people: readonly NamedPerson[];
  readonly remarks: readonly Remark[];
}

/** Asked for when the field opens. Without an answer it is a field like any other. */
function useKnown(planId: string): Known {
  const [known, setKnown] = useState<Known>({ people: [], remarks: [] });
  useEffect(() => {
    let ended = false;
    void Promise.all([fetchReaders(planId), fetchRemarks()]).then(([readers, remarks]) => {
      if (ended) return;
      setKnown({ people: readers.ok ? readers.value.people : [], remarks: remarks.ok ? remarks.value.remarks : [] });
    });
    return () => {
      ended = true;
    };
  }, [planId]);
  return known;
}
