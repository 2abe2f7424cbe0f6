/** The class logs that the studio does not have yet: sent when the page opens, when the network returns, and after a class. */
import { useCallback, useEffect, useRef, useState } from "react";
import { keptLogs, letGoLog } from "./kept.ts";
import { sendLog } from "./studio-calls.ts";

/** From random bytes: browsers have no `crypto.randomUUID` over plain HTTP from another machine. */
export function newSessionId(): string {
  const bytes = crypto.getRandomValues(new Uint8Array(16));
  return Array.from(bytes, (byte) => byte.toString(16).padStart(2, "0")).join("");
}

export interface ClassLogs {
  /** Logs the studio does not have yet. */
  readonly waiting: number;
  /** Why the studio refused one, as it said; null when only the network is missing. */
  readonly refused: string | null;
  send(): Promise<void>;
}

/** Answers after which trying again can help. */
const LATER = new Set(["no-network", "strange", "internal"]);

export function useClassLogs(token: string | undefined): ClassLogs {
  const [waiting, setWaiting] = useState(0);
  const [refused, setRefused] = useState<string | null>(null);
  const sending = useRef(false);

  const send = useCallback(async () => {
    if (!token || sending.current) return;
    sending.current = true;
    try {
      const result = await sendAll(token);
      setWaiting(result.waiting);
      setRefused(result.refused);
    } finally {
      sending.current = false;
    }
  }, [token]);

  useEffect(() => {
    const now = () => send().catch(() => undefined); // no storage: the shelf says so
    now();
    window.addEventListener("online", now);
    return () => window.removeEventListener("online", now);
  }, [send]);

  return { waiting, refused, send };
}

/** A log is deleted only when the studio has answered that it has it, or has an earlier one of that class. */
async function sendAll(token: string): Promise<{ waiting: number; refused: string | null }> {
  let waiting = 0;
  let refused: string | null = null;
  for (const log of await keptLogs()) {
    const answer = await sendLog(token, log);
    if (answer.ok || answer.code === "log-differs") await letGoLog(log.sessionId);
    else {
      waiting++;
      if (!LATER.has(answer.code)) refused = answer.message;
    }
  }
  return { waiting, refused };
}
