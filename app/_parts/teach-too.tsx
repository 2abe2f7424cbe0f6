"use client";
/** A manager who does not write plans yet says that they teach: one press, on the desk and under People. */
import { useRouter } from "next/navigation";
import type { TeachesToo } from "#server/people/teach-too.ts";
import { ProblemLine } from "./problem-line.tsx";
import { useSend } from "./use-send.ts";

export function TeachToo({ strong = false }: { readonly strong?: boolean }) {
  const router = useRouter();
  const sending = useSend();
  const say = async () => {
    if ((await sending.run<TeachesToo>("POST", "/api/people/teach", {})) !== undefined) router.refresh();
  };
  return (
    <>
      <button
        type="button"
        className={strong ? "button button-strong" : "button"}
        onClick={say}
        aria-disabled={sending.busy}
      >
        I teach here too
      </button>
      <ProblemLine say={sending.problem} />
    </>
  );
}
