"use client";
/** Asks before an address stops working: to renew it, or to withdraw it. */
import { useRef } from "react";
import type { FeedPlace, NewAddress } from "#server/feeds/manage-feeds.ts";
import { Dialog } from "../../_parts/dialog.tsx";
import { ProblemLine } from "../../_parts/problem-line.tsx";
import { useSend } from "../../_parts/use-send.ts";
import { calendarTitle } from "./feed-words.ts";
import styles from "./feeds.module.css";

export interface FeedEnding {
  readonly place: FeedPlace;
  readonly what: "renew" | "withdraw";
}

interface EndProps {
  readonly ending: FeedEnding;
  /** With the new address, or null where there is none any more. */
  readonly onEnded: (place: FeedPlace, address: string | null) => void;
  readonly onClose: () => void;
}

const WORDS = {
  renew: {
    title: "Renew the address",
    what: "You get a new address, and the old one stops working at once. Every program that reads this calendar has to be given the new one.",
    act: "Renew it",
  },
  withdraw: {
    title: "Withdraw the address",
    what: "It stops working at once: programs that read this calendar find nothing any more. The record keeps who withdrew it.",
    act: "Withdraw it",
  },
} as const;

export function EndDialog({ ending: { place, what }, onEnded, onClose }: EndProps) {
  const sending = useSend();
  const closer = useRef<(() => void) | null>(null);
  const words = WORDS[what];
  const end = async () => {
    const id = place.feed?.id ?? "";
    if (what === "renew") {
      const made = await sending.run<NewAddress>("POST", `/api/feeds/${id}/renew`, {});
      if (!made) return;
      onEnded(place, made.address);
    } else {
      if ((await sending.run("DELETE", `/api/feeds/${id}`)) === undefined) return;
      onEnded(place, null);
    }
    closer.current?.();
  };
  return (
    <Dialog title={words.title} onClose={onClose} closer={closer}>
      <div className={styles.form}>
        <p>
          <b>{calendarTitle(place)}.</b> {words.what}
        </p>
        <ProblemLine say={sending.problem} />
        <p>
          <button type="button" className="button button-strong" onClick={end} aria-disabled={sending.busy}>
            {words.act}
          </button>
        </p>
      </div>
    </Dialog>
  );
}
