"use client";
/** A plan's page: its words until the document is read, then the plan itself. */
import { FormatsProvider } from "#app/_parts/formats.tsx";
import { LatePart } from "#app/_parts/late-part.tsx";
import type { PlanPageProps } from "#app/_session/session-types.ts";
import { usePlanSession, useSnapshotOnce } from "#app/_session/use-session.ts";
import { loadLater } from "#lib/client/late.ts";
import { Notices } from "./notices.tsx";
import { Opening } from "./opening.tsx";

/** Asked for at once: it comes while the document is read. */
const opened = loadLater(() => import("./plan-in-use.tsx").then((module) => module.PlanInUse));
if (typeof window !== "undefined") opened.fetch().catch(() => undefined);

export function PlanPage(props: PlanPageProps) {
  const session = usePlanSession(props);
  const snap = useSnapshotOnce(session);
  const opening = (
    <Opening {...props} barred={snap !== null && (snap.noLive !== null || snap.closeCode !== null)}>
      {session && snap && <Notices session={session} snap={snap} />}
    </Opening>
  );
  return (
    <FormatsProvider formats={props.formats}>
      {session && snap && session.canBeDrawn(snap) ? (
        <LatePart part={opened} props={{ session }} meanwhile={opening} />
      ) : (
        opening
      )}
    </FormatsProvider>
  );
}
