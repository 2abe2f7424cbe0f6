"use client";
/** Taking up the reading of a plan, letting it go, or taking it over: one act, by who reads it now. */
import { type Sending, useSend } from "../_parts/use-send.ts";
import { TAKE_UP, takeOverWords } from "./hand-words.ts";

interface Reading {
  readonly planId: string;
  /** The lead who reads it now. */
  readonly reader: { readonly id: string; readonly name: string } | null;
  readonly me: string;
}

interface TakingUp extends Pick<Sending, "busy" | "problem"> {
  readonly mine: boolean;
  readonly words: string;
  /** True when the server did it; a refusal is in `problem`. */
  turn(): Promise<boolean>;
}

export function useTakeUp({ planId, reader, me }: Reading): TakingUp {
  const { busy, problem, run } = useSend();
  const mine = reader?.id === me;
  const turn = async () => {
    const from = reader && !mine ? { from: reader.id } : {};
    return (await run("POST", `/api/plans/${planId}/take-up`, { on: !mine, ...from })) !== undefined;
  };
  const words = mine ? TAKE_UP.letGo : reader ? takeOverWords(reader.name) : TAKE_UP.act;
  return { busy, problem, mine, words, turn };
}
