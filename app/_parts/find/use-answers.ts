"use client";
/** What was found for what is typed: pages at hand at once, the server's answer as soon as it comes. */
import { useEffect, useMemo, useState } from "react";
import type { AtHand, FoundByWords } from "#lib/find/found.ts";
import { type KnownPage, type PageIndex, pageIndex } from "#lib/find/known-pages.ts";
import { type SoughtWord, soughtWords } from "#lib/find/words.ts";
import { type RefusedRequest, send } from "../send.ts";

/** Keys that follow each other faster are one question. Together with the answer it stays under a tenth of a second. */
const QUIET_MS = 40;
/** What is at hand is asked for again after so long. */
const FRESH_MS = 60_000;

export interface FindAnswers {
  readonly asked: readonly SoughtWord[];
  /** Of what is typed now, or while that is on its way of what was typed before; null when there is none. */
  readonly found: FoundByWords | null;
  /** The answer is not yet to what is typed now, or not yet all of it. */
  readonly waiting: boolean;
  /** Why there is no answer. */
  readonly refused: RefusedRequest | null;
  readonly atHand: AtHand | null;
  readonly index: Readonly<Record<keyof AtHand, PageIndex>>;
}

interface Heard {
  readonly text: string;
  readonly found: FoundByWords | null;
  readonly refused: RefusedRequest | null;
}

export function useAnswers(text: string): FindAnswers {
  const asked = useMemo(() => soughtWords(text), [text]);
  const heard = useServer(asked.length === 0 ? "" : text.trim());
  const { atHand, refused } = useAtHand();
  const comes = atHand === null && refused === null;
  const index = useMemo(() => indexOf(atHand), [atHand]);
  const quiet = asked.length === 0;
  return {
    asked,
    found: quiet ? null : heard.found,
    waiting: !quiet && (comes || heard.text !== text.trim()),
    refused: quiet ? null : (heard.refused ?? refused),
    atHand,
    index,
  };
}

const NOTHING: Heard = { text: "", found: null, refused: null };

/** A later question calls an earlier one off, so that no answer comes to something that is no longer asked. */
function useServer(text: string): Heard {
  const [heard, setHeard] = useState(NOTHING);
  useEffect(() => {
    if (text === "") return setHeard(NOTHING);
    const asking = new AbortController();
    const ask = async () => {
      const answer = await send<FoundByWords>("GET", `/api/find?q=${encodeURIComponent(text)}`, undefined, {
        signal: asking.signal,
      });
      if (asking.signal.aborted) return;
      setHeard(answer.ok ? { text, found: answer.value, refused: null } : { text, found: null, refused: answer });
    };
    const timer = setTimeout(() => void ask(), QUIET_MS);
    return () => {
      clearTimeout(timer);
      asking.abort();
    };
  }, [text]);
  return heard;
}

let kept: { readonly value: AtHand; readonly at: number } | null = null;

function useAtHand(): { readonly atHand: AtHand | null; readonly refused: RefusedRequest | null } {
  const [atHand, setAtHand] = useState(kept?.value ?? null);
  const [refused, setRefused] = useState<RefusedRequest | null>(null);
  useEffect(() => {
    if (kept && performance.now() - kept.at < FRESH_MS) return;
    const asking = new AbortController();
    void send<AtHand>("GET", "/api/find/at-hand", undefined, { signal: asking.signal }).then((answer) => {
      if (asking.signal.aborted) return;
      if (!answer.ok) return setRefused(answer);
      kept = { value: answer.value, at: performance.now() };
      setAtHand(answer.value);
    });
    return () => asking.abort();
  }, []);
  return { atHand, refused };
}

const NO_PAGES: readonly KnownPage[] = [];

function indexOf(atHand: AtHand | null): FindAnswers["index"] {
  const of = (kind: keyof AtHand) => pageIndex(atHand?.[kind] ?? NO_PAGES);
  return {
    ...{ pages: of("pages"), rooms: of("rooms"), classes: of("classes") },
    ...{ signed: of("signed"), people: of("people"), rules: of("rules") },
  };
}
