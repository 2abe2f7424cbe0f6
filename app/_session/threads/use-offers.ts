"use client";
/** The list under a comment field: what it offers, which choice the keys are on, and taking one. */
import { type KeyboardEvent, type RefObject, useEffect, useLayoutEffect, useRef, useState } from "react";
import type { NamedPerson } from "#lib/margin/named.ts";
import type { Remark, RemarkPlace } from "#lib/remarks/match-remarks.ts";
import { type Choice, type Offers, offersAt, takeChoice } from "#lib/remarks/offers.ts";
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
  readonly people: readonly NamedPerson[];
  /** After each change of the text or the caret. */
  look(): void;
  take(choice: Choice): void;
  /** True when the key was for the list. */
  onKey(event: KeyboardEvent): boolean;
  close(): void;
}

export function useOffers({ planId, meId, place, field, body, setBody }: FieldOffers): OfferList {
  const known = useKnown(planId);
  const [offers, setOffers] = useState<Offers | null>(null);
  const [chosen, setChosen] = useState(-1);
  /** Where Escape closed it: that part of the text does not open it again. */
  const closedAt = useRef<number | null>(null);
  const caret = useRef<number | null>(null);
  useLayoutEffect(() => {
    if (caret.current === null) return;
    field.current?.setSelectionRange(caret.current, caret.current);
    caret.current = null;
  });
  const show = (next: Offers | null) => {
    if (next === null || next.from !== offers?.from) setChosen(next?.asked ? 0 : -1);
    else setChosen(Math.min(chosen, next.choices.length - 1));
    setOffers(next);
  };
  const look = () => {
    const element = field.current;
    if (!element || element.selectionStart !== element.selectionEnd) return show(null);
    const people = known.people.filter(({ id }) => id !== meId);
    const next = offersAt(element.value, element.selectionStart, { ...known, people, place });
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
  const take = (choice: Choice) => {
    const element = field.current;
    if (!offers || !element) return;
    const taken = takeChoice(body, element.selectionStart, offers, choice);
    setBody(taken.text);
    caret.current = taken.caret;
    closedAt.current = offers.from;
    setOffers(null);
    element.focus();
  };
  const onKey = (event: KeyboardEvent): boolean => {
    if (!offers || event.nativeEvent.isComposing || event.ctrlKey || event.metaKey || event.altKey) return false;
    const act = keyAct(event, offers.choices.length, chosen);
    if (act === null) return false;
    event.preventDefault();
    event.stopPropagation();
    const choice = offers.choices[chosen];
    if (act === "close") close();
    else if (act === "take") choice && take(choice);
    else setChosen(act);
    return true;
  };
  return { offers, chosen, people: known.people, look, take, onKey, close };
}

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
