"use client";
/** The calendars and their addresses: make, renew, withdraw. A new address is shown once, under its calendar. */
import { useRouter } from "next/navigation";
import { useState } from "react";
import type { FeedPlace, NewAddress } from "#server/feeds/manage-feeds.ts";
import { ProblemLine } from "../../_parts/problem-line.tsx";
import { useSend } from "../../_parts/use-send.ts";
import { EndDialog, type FeedEnding } from "./end-dialog.tsx";
import { FeedLine } from "./feed-line.tsx";
import { groupsOf, keyOf } from "./feed-words.ts";
import styles from "./feeds.module.css";

interface MadeAddress {
  readonly key: string;
  readonly address: string;
}

export function FeedList({ places }: { readonly places: readonly FeedPlace[] }) {
  const router = useRouter();
  const sending = useSend();
  const [made, setMade] = useState<MadeAddress | null>(null);
  const [ending, setEnding] = useState<FeedEnding | null>(null);
  const make = async ({ kind, subject, ...place }: FeedPlace) => {
    const of = kind === "room" ? { kind, subject } : { kind };
    const added = await sending.run<NewAddress>("POST", "/api/feeds", of);
    if (added) setMade({ key: keyOf({ kind, subject, ...place }), address: added.address });
    // Also where it was refused: somebody has made it meanwhile.
    router.refresh();
  };
  const ended = (place: FeedPlace, address: string | null) => {
    const key = keyOf(place);
    if (address !== null) setMade({ key, address });
    else if (made?.key === key) setMade(null);
    router.refresh();
  };
  return (
    <>
      <ProblemLine say={sending.problem} />
      {groupsOf(places).map(({ title, of }) => (
        <section key={title} className={styles.group}>
          <h2>{title}</h2>
          <ul className={styles.feeds}>
            {of.map((place) => {
              const key = keyOf(place);
              const address = made?.key === key ? made.address : null;
              const acts = { make: () => make(place), end: (what: FeedEnding["what"]) => setEnding({ place, what }) };
              return <FeedLine key={key} place={place} address={address} busy={sending.busy} acts={acts} />;
            })}
          </ul>
        </section>
      ))}
      {ending ? <EndDialog ending={ending} onEnded={ended} onClose={() => setEnding(null)} /> : null}
    </>
  );
}
