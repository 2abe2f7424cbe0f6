"use client";
/** One calendar: whether it has an address and when it was read last, and what can be done about it. */
import type { FeedPlace } from "#server/feeds/manage-feeds.ts";
import { CopyLink } from "../../_parts/copy-link.tsx";
import { LocalTime } from "../../_parts/local-time.tsx";
import type { FeedEnding } from "./end-dialog.tsx";
import { calendarTitle } from "./feed-words.ts";
import styles from "./feeds.module.css";

interface LineProps {
  readonly place: FeedPlace;
  /** Just made; it is shown this once. */
  readonly address: string | null;
  readonly busy: boolean;
  readonly acts: { make(): void; end(what: FeedEnding["what"]): void };
}

export function FeedLine({ place, address, busy, acts }: LineProps) {
  return (
    <li className={styles.feed}>
      <div className={styles.facts}>
        <h3>{calendarTitle(place)}</h3>
        <p className="quiet small">
          <FeedState feed={place.feed} own={place.own} />
        </p>
      </div>
      <p className={styles.acts}>
        <Acts place={place} busy={busy} acts={acts} />
      </p>
      {address === null ? null : <NewAddressBox address={address} />}
    </li>
  );
}

function Acts({ place, busy, acts }: Omit<LineProps, "address">) {
  const of = <span className="visually-hidden"> for {calendarTitle(place)}</span>;
  if (!place.feed) {
    return (
      <button type="button" className="button" onClick={acts.make} aria-disabled={busy}>
        Make an address{of}
      </button>
    );
  }
  return (
    <>
      {place.mayMake ? (
        <button type="button" className="act" onClick={() => acts.end("renew")}>
          Renew{of}
        </button>
      ) : null}
      <button type="button" className="act" onClick={() => acts.end("withdraw")}>
        Withdraw{of}
      </button>
    </>
  );
}

function FeedState({ feed, own }: Pick<FeedPlace, "feed" | "own">) {
  if (!feed) return <>no address</>;
  return (
    <>
      made <LocalTime at={feed.madeAt} />
      {own ? null : ` by ${feed.madeBy}`} ·{" "}
      {feed.lastReadAt === null ? (
        "not read yet"
      ) : (
        <>
          last read <LocalTime at={feed.lastReadAt} />
        </>
      )}
    </>
  );
}

function NewAddressBox({ address }: { readonly address: string }) {
  return (
    <div className={`done ${styles.made}`} role="status">
      <CopyLink link={address} label="Address to subscribe to" />
      <p className="quiet small">
        It is shown only now. In your calendar program, add a calendar from an address and paste it. Whoever has it can
        read the classes without signing in, so give it to nobody else.
      </p>
    </div>
  );
}
