"use client";
/**
 * A time in the reader's own zone. The server does not know the zone, so its page shows the day and leaves room for the
 * hour, which the browser fills in: no line breaks differently when it does.
 */
import { useSyncExternalStore } from "react";
import { dayOfMoment, momentWords } from "./time-words.ts";

const never = () => () => {};

interface LocalTimeProps {
  /** ms since the epoch. */
  readonly at: number;
  /** With the year, where old times stand beside new ones. */
  readonly year?: boolean;
}

export function LocalTime({ at, year = false }: LocalTimeProps) {
  const words = useSyncExternalStore(
    never,
    () => momentWords(at, year),
    () => null,
  );
  return (
    <time style={{ fontFamily: "inherit" }} dateTime={new Date(at).toISOString()}>
      {words ?? (
        <>
          {dayOfMoment(at, year)}
          <span style={{ visibility: "hidden" }} aria-hidden="true">
            , 00:00
          </span>
        </>
      )}
    </time>
  );
}
