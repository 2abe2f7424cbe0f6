"use client";
/** Begins a new plan as the edition was, and opens it. */
import { useRouter } from "next/navigation";
import * as z from "zod/mini";
import { ProblemLine } from "#app/_parts/problem-line.tsx";
import { useSend } from "#app/_parts/use-send.ts";

const madeSchema = z.object({ id: z.string() });

interface Props {
  /** The edition's address. */
  readonly path: string;
  readonly number: number;
  /** On the page of the edition. */
  readonly strong?: boolean;
}

export function TemplateAct({ path, number, strong = false }: Props) {
  const router = useRouter();
  const sending = useSend();
  const begin = async () => {
    const made = await sending.run("POST", `/api${path}/template`, {}, { reads: madeSchema });
    if (made) router.push(`/plans/${made.id}`);
  };
  return (
    <>
      <button type="button" className={strong ? "button" : "act"} onClick={begin} aria-disabled={sending.busy}>
        Use as a template{!strong && <span className="visually-hidden">: edition {number}</span>}
      </button>
      <ProblemLine say={sending.problem} />
    </>
  );
}
