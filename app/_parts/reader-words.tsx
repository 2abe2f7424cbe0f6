"use client";
/** Pieces of text in the reader's formats, for server components, which have no context. */
import { withdrawnWords } from "#lib/card/withdrawn-words.ts";
import { dateOfMoment, shortDayWords, timeWords } from "#lib/formats/dates.ts";
import { offsetsIn } from "#lib/formats/units.ts";
import type { Withdrawal } from "#lib/protocol/messages.ts";
import { useFormats } from "./formats.tsx";

/** "3 November 2026" */
export const DateText = ({ at }: { readonly at: number }) => <>{dateOfMoment(at, useFormats(), true)}</>;

/** "Tue 1 Dec, 07:00" of "2026-12-01 07:00": the studio's own time, whatever the reader's zone. */
export function ClassTime({ at }: { readonly at: string }) {
  const f = useFormats();
  return (
    <>
      {shortDayWords(at.slice(0, 10), f)}, {timeWords(at.slice(11), f)}
    </>
  );
}

/** Words that may say how far people start from the anchor. */
export const OffsetText = ({ words }: { readonly words: string }) => <>{offsetsIn(words, useFormats())}</>;

export const WithdrawnText = ({ of }: { readonly of: Withdrawal }) => <>{withdrawnWords(of, useFormats())}</>;
