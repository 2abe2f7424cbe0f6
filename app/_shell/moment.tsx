"use client";
/** A time in the reader's own zone: the server does not know it, so the words come once the page is in the browser. */
import { useSyncExternalStore } from "react";
import { momentWords } from "./words.ts";

const never = () => () => {};

export function Moment({ at }: { readonly at: number }) {
  const words = useSyncExternalStore(
    never,
    () => momentWords(at),
    () => "",
  );
  return <time dateTime={new Date(at).toISOString()}>{words}</time>;
}
