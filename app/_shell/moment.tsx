"use client";
/** A time in the reader's own zone. The server does not know the zone: its page says the day, the browser the hour. */
import { useSyncExternalStore } from "react";
import { dayOfMoment, momentWords } from "./words.ts";

const never = () => () => {};

export function Moment({ at }: { readonly at: number }) {
  const words = useSyncExternalStore(
    never,
    () => momentWords(at),
    () => dayOfMoment(at),
  );
  return (
    <time style={{ fontFamily: "inherit" }} dateTime={new Date(at).toISOString()}>
      {words}
    </time>
  );
}
