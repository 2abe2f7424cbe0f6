/** What stands between the person and their plan, in sentences over it. */
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
      {near !== undefined && (
        <p className={styles.readAlong} role="status">
          {near}
        </p>
      )}
      {snap.closeCode !== null && snap.closeSentence !== null && (
        <ClosedNotice session={session} code={snap.closeCode} sentence={snap.closeSentence} />
      )}
      <NoLiveNotice sentence={snap.noLive} />
      {snap.copy === "lost" && (
        <p className={styles.readAlong} role="alert">
          This device keeps no copy of the plan any more: its storage was cleared. What you type goes to the server
          while you are connected; reload the page to have a copy again.
        </p>
      )}
      {snap.ready && !snap.rights.writes && (
        <p className={styles.readAlong}>
          You read along: this plan is not yours to write in
          {snap.rights.comments ? ", but you may comment on anything." : "."}
        </p>
      )}
    </>
  );
}
