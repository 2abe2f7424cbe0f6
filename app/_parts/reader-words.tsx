"use client";
/** Pieces of text in the reader's formats, for server components, which have no context. */
import { withdrawnWords } from "#lib/card/withdrawn-words.ts";
import { dateOfMoment } from "#lib/formats/dates.ts";
import { offsetIn } from "#lib/formats/units.ts";
import type { Withdrawal } from "#lib/protocol/messages.ts";
import { useFormats } from "./formats.tsx";

/** "3 November 2026" */
export const DateText = ({ at }: { readonly at: number }) => <>{dateOfMoment(at, useFormats(), true)}</>;

/** Words that may say how far people start from the anchor. */
export const OffsetText = ({ words }: { readonly words: string }) => <>{offsetIn(words, useFormats())}</>;

export const WithdrawnText = ({ of }: { readonly of: Withdrawal }) => <>{withdrawnWords(of, useFormats())}</>;
