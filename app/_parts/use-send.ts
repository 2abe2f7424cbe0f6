"use client";
/**
 * One form's requests to the server: busy while it waits, the problem as a sentence until the next try. A second press
 * meanwhile is ignored here and the button is only `aria-disabled`: a disabled one would lose the keyboard's focus.
 */
import { useRef, useState } from "react";
import { type Method, type SendOptions, type Sent, send } from "./send.ts";

export interface Sending {
  readonly busy: boolean;
  readonly problem: string | null;
  clear(): void;
  /** Resolves with the value, or undefined when there was a problem (which is then shown). */
  run<T>(method: Method, url: string, body?: unknown, options?: SendOptions<T>): Promise<T | undefined>;
  /** The same for a request that is sent elsewhere; undefined too while another one is on its way. */
  runWith<T>(request: () => Promise<Sent<T>>): Promise<Sent<T> | undefined>;
}

export function useSend(): Sending {
  const [busy, setBusy] = useState(false);
  const [problem, setProblem] = useState<string | null>(null);
  const waiting = useRef(false);
  const runWith = async <T>(request: () => Promise<Sent<T>>) => {
    if (waiting.current) return undefined;
    waiting.current = true;
    setBusy(true);
    setProblem(null);
    const sent = await request();
    waiting.current = false;
    setBusy(false);
    if (!sent.ok) setProblem(sent.message);
    return sent;
  };
  const run = async <T>(method: Method, url: string, body?: unknown, options?: SendOptions<T>) => {
    const sent = await runWith(() => send(method, url, body, options));
    return sent?.ok ? sent.value : undefined;
  };
  return { busy, problem, clear: () => setProblem(null), run, runWith };
}
