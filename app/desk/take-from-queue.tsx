"use client";
/** A lead takes a round of reading from the queue, so that nobody reads it a second time, or leaves it to others. */
import { useRouter } from "next/navigation";
import { TAKE_UP, takeOverWords } from "../_margin/hand-words.ts";
import { ProblemLine } from "../_parts/problem-line.tsx";
import { useSend } from "../_parts/use-send.ts";

interface TakeUpProps {
  readonly planId: string;
  readonly title: string;
  readonly reader: { readonly id: string; readonly name: string } | null;
  readonly me: string;
}

export function TakeFromQueue({ planId, title, reader, me }: TakeUpProps) {
  const sending = useSend();
  const router = useRouter();
  const mine = reader?.id === me;
  const turn = async () => {
    const body = { on: !mine, ...(reader && !mine ? { from: reader.id } : {}) };
    await sending.run("POST", `/api/plans/${planId}/take-up`, body);
    // Also after a refusal: somebody else was quicker, and the list is old.
    router.refresh();
  };
  return (
    <>
      <button type="button" className="act" onClick={turn} aria-disabled={sending.busy}>
        {reader === null ? TAKE_UP.act : mine ? TAKE_UP.letGo : takeOverWords(reader.name)}
        <span className="visually-hidden">: {title}</span>
      </button>
      <ProblemLine say={sending.problem} />
    </>
  );
}
