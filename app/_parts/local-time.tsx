"use client";
/** A moment in the reader's own zone, language and clock, the same on the server and in the browser. */
import { momentWords } from "#lib/formats/dates.ts";
import { useFormats } from "./formats.tsx";

interface LocalTimeProps {
  /** ms since the epoch. */
  readonly at: number;
  /** With the year, where old times stand beside new ones. */
  readonly year?: boolean;
}

export function LocalTime({ at, year = false }: LocalTimeProps) {
  const f = useFormats();
  return (
    <time style={{ fontFamily: "inherit" }} lang={f.dates} dateTime={new Date(at).toISOString()}>
      {momentWords(at, f, year)}
    </time>
  );
}
