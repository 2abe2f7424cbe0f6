"use client";
/** The two steps of bringing moves in from a plan file: look at what it would add or change, then bring what is ticked. */
import { useRouter } from "next/navigation";
import { useState } from "react";
import { plural } from "#lib/plan/format.ts";
import type { BroughtMove } from "#server/library/compare-moves.ts";
import { send } from "../../_parts/send.ts";
import { useSend } from "../../_parts/use-send.ts";

export interface LookedAt {
  readonly text: string;
  readonly fileName: string;
  readonly moves: readonly BroughtMove[];
}

export interface Bringing {
  readonly busy: boolean;
  readonly problem: string | null;
  /** What was brought, in words; null before. */
  readonly done: string | null;
  readonly looked: LookedAt | null;
  readonly ticked: ReadonlySet<string>;
  tick(id: string, on: boolean): void;
  look(file: File): Promise<void>;
  bring(): Promise<void>;
}

export function useBring(): Bringing {
  const router = useRouter();
  const sending = useSend();
  const [looked, setLooked] = useState<LookedAt | null>(null);
  const [ticked, setTicked] = useState<ReadonlySet<string>>(new Set());
  const [done, setDone] = useState<string | null>(null);

  const lookAt = async (text: string, fileName: string) => {
    const sent = await compare(text);
    if (!sent.ok) return sent;
    const { moves } = sent.value;
    setLooked({ text, fileName, moves });
    setTicked(new Set(moves.filter((move) => move.kind === "new").map((move) => move.id)));
    return sent;
  };
  const bringTicked = async (from: LookedAt) => {
    const sent = await send("PUT", "/api/library", chosenOf(from.moves, ticked));
    // Somebody changed one of them meanwhile: what the file would change is looked at again.
    if (!sent.ok && sent.status === 409) await lookAt(from.text, from.fileName);
    return sent;
  };
  const look = async (file: File) => {
    setDone(null);
    await sending.runWith(async () => lookAt(await file.text(), file.name));
  };
  const bring = async () => {
    if (!looked) return;
    setDone(null);
    const sent = await sending.runWith(() => bringTicked(looked));
    if (!sent?.ok) return;
    setDone(`${plural(ticked.size, "move")} brought into the library.`);
    setLooked(null);
    router.refresh();
  };
  const tick = (id: string, on: boolean) =>
    setTicked(new Set(on ? [...ticked, id] : [...ticked].filter((other) => other !== id)));
  const { busy, problem } = sending;
  return { busy, problem, done, looked, ticked, tick, look, bring };
}

/** The file goes as it is, so that the server sees a key that is given twice. */
const compare = (text: string) =>
  send<{ readonly moves: readonly BroughtMove[] }>("POST", "/api/library/compare", new Blob([text]));

function chosenOf(moves: readonly BroughtMove[], ticked: ReadonlySet<string>) {
  const chosen = moves.filter((move) => ticked.has(move.id));
  return {
    moves: Object.fromEntries(chosen.map((move) => [move.id, move.move])),
    seen: Object.fromEntries(chosen.map((move) => [move.id, move.seen])),
  };
}
