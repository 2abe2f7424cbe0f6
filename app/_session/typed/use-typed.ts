"use client";
/** A field whose words are kept by place. */
import { useEffect, useRef, useSyncExternalStore } from "react";
import type { Typed, TypedPlace, TypedWords } from "./typed-words.ts";

export interface TypedField {
  readonly words: string;
  /** The round in which they were begun, where one was told. */
  readonly round: number | undefined;
  set(words: string): void;
  /** Sent, or not wanted any more. */
  drop(): void;
}

const NONE: readonly Typed[] = [];

export const useTypedList = (typed: TypedWords): readonly Typed[] =>
  useSyncExternalStore(typed.subscribe, typed.list, () => NONE);

/** For the component that draws the field. */
export function useTyped({ typed }: { readonly typed: TypedWords }, at: TypedPlace): TypedField {
  const one = useSyncExternalStore(
    typed.subscribe,
    () => typed.at(at.place),
    () => undefined,
  );
  const newest = useRef(at);
  newest.current = at;
  // biome-ignore lint/correctness/useExhaustiveDependencies: the field is entered once for each place
  useEffect(() => typed.enter(newest.current), [typed, at.place]);
  return {
    words: one?.words ?? "",
    round: one?.round,
    set: (words) => typed.keep(newest.current, words),
    drop: () => typed.drop(at.place),
  };
}
