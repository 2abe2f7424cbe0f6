"use client";
/** A return and a sign-off belong to the round in which their dialog was opened; one that is over is said at once. */
import { useState } from "react";
import { useFormats } from "#app/_parts/formats.tsx";
import { momentWords } from "#lib/formats/dates.ts";
import type { StateNews } from "#lib/protocol/messages.ts";
import { ROUND_OVER } from "./hand-words.ts";
import { endedWords } from "./step-words.ts";

interface RoundHere {
  /** Undefined where no round is kept of the plan. */
  readonly number: number | undefined;
  readonly isOver: boolean;
  /** What goes with the step. */
  readonly sent: { readonly round?: number };
}

export const ROUND_OVER_ID = "round-over";

/** The round that was open when the dialog was. What `me` ended is no news to them. */
export function useRoundHere(state: StateNews, me: string): RoundHere {
  const [number] = useState(state.round?.number);
  const { round } = state;
  const isOpen = state.state === "handed-in" && round?.number === number;
  const isOver = number !== undefined && !isOpen && !(round?.number === number && round?.ended?.byId === me);
  return { number, isOver, sent: number === undefined ? {} : { round: number } };
}

export function RoundOver({ state, round }: { readonly state: StateNews; readonly round: RoundHere }) {
  const f = useFormats();
  if (!round.isOver) return null;
  const { state: now, round: news } = state;
  const ended = news?.ended ?? news?.before;
  const isAgain = now === "handed-in" && news !== undefined;
  return (
    <p role="alert" id={ROUND_OVER_ID} className="notice">
      {ended && `${endedWords(ended, momentWords(ended.at, f))} `}
      {isAgain ? ROUND_OVER.again(news.number) : ROUND_OVER.keep}
    </p>
  );
}
