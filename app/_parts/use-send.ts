"use client";
/**
 * One form's talk with the server: busy while it waits, the problem as a sentence until the next try. What is pressed
 * meanwhile is passed over here, and buttons are only `aria-disabled` by it: one that is disabled drops the keyboard's focus.
 */
import { useRef, useState } from "react";
import { type Sent, send } from "./send.ts";

export interface Sending {
  readonly busy: boolean;
  readonly problem: string | null;
  clear(): void;
  /** Resolves with the value, or undefined when there was a problem (which is then shown). */
  run<T>(method: "POST" | "PATCH" | "DELETE" | "PUT", url: string, body?: unknown): Promise<T | undefined>;
}

export function useSend(): Sending {
  const [busy, setBusy] = useState(false);
  const [problem, setProblem] = useState<string | null>(null);
  const waiting = useRef(false);
  const run = async <T>(method: "POST" | "PATCH" | "DELETE" | "PUT", url: string, body?: unknown) => {
    if (waiting.current) return undefined;
    waiting.current = true;
    setBusy(true);
    setProblem(null);
    const sent: Sent<T> = await send<T>(method, url, body);
    waiting.current = false;
    setBusy(false);
    if (sent.ok) return sent.value;
    setProblem(sent.message);
    return undefined;
  };
  return { busy, problem, clear: () => setProblem(null), run };
}
