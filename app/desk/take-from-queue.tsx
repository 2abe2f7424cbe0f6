"use client";
/** A lead takes a round of reading from the queue, so that nobody reads it a second time, or leaves it to others. */
import { useRouter } from "next/navigation";
import { useTakeUp } from "../_margin/use-take-up.ts";
import { ProblemLine } from "../_parts/problem-line.tsx";

interface TakeUpProps {
  readonly planId: string;
  readonly title: string;
  readonly reader: { readonly id: string; readonly name: string } | null;
  readonly me: string;
}

export function TakeFromQueue({ title, ...reading }: TakeUpProps) {
  const taking = useTakeUp(reading);
  const router = useRouter();
  const turn = async () => {
    await taking.turn();
    // Also after a refusal: somebody else was quicker, and the list is old.
    router.refresh();
  };
  return (
    <>
      <button type="button" className="act" onClick={turn} aria-disabled={taking.busy}>
        {taking.words}
        <span className="visually-hidden">: {title}</span>
      </button>
      <ProblemLine say={taking.problem} />
    </>
  );
}
