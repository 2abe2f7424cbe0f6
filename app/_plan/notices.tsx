/** Sentences over the plan: what keeps a person from writing in it, or their words from being saved. */
import { NewerVersion } from "#app/_parts/newer-version.tsx";
import { NoLiveNotice } from "#app/_parts/no-live-notice.tsx";
import { nearBounds, PLAN_BOUNDS } from "#lib/doc/bounds.ts";
import { ClosedNotice } from "../_parts/closed-notice.tsx";
import type { PlanSession } from "../_session/session.ts";
import type { SessionSnapshot } from "../_session/session-types.ts";
import styles from "./plan-page.module.css";

export function Notices({ session, snap }: { session: PlanSession; snap: SessionSnapshot }) {
  const near = nearBounds(session.doc, PLAN_BOUNDS);
  return (
    <>
      <NewerVersion />
      {near !== undefined && (
        <p className={styles.notice} role="status">
          {near}
        </p>
      )}
      {snap.closeCode !== null && snap.closeSentence !== null && (
        <ClosedNotice session={session} code={snap.closeCode} sentence={snap.closeSentence} />
      )}
      <NoLiveNotice sentence={snap.noLive} />
      {snap.copy === "lost" && (
        <p className={styles.notice} role="alert">
          This browser’s storage was cleared, so there is no copy of the plan on this device any more. What you type is
          saved on the server while you are connected. Reload the page to have a copy again.
        </p>
      )}
      {snap.ready && !snap.rights.writes && (
        <p className={styles.notice}>
          You can read this plan but not change it.{snap.rights.comments && " You can comment on anything in it."}
        </p>
      )}
    </>
  );
}
