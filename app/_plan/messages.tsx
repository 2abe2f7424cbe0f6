"use client";
/** What the page says by itself: what others did meanwhile, an undo that did nothing, and each act for a screen reader. */
import { lateStepTold } from "#app/_margin/late-review.ts";
import { Corner } from "#app/_parts/corner.tsx";
import { LatePart } from "#app/_parts/late-part.tsx";
import { NotUndoneNotice } from "#app/_parts/not-undone-notice.tsx";
import { OvertakenNotice } from "#app/_parts/overtaken-notice.tsx";
import type { PlanSession } from "#app/_session/session.ts";
import type { SessionSnapshot } from "#app/_session/session-types.ts";
import { ToldNotices } from "#app/_session/typed/told-notices.tsx";
import { TakenOutNotices } from "#app/_taken-out/notices.tsx";
import { TypedKept } from "#app/_taken-out/typed-kept.tsx";

export function Messages({ session, snap }: { readonly session: PlanSession; readonly snap: SessionSnapshot }) {
  return (
    <>
      <LatePart part={lateStepTold} props={{ session }} meanwhile={null} />
      <Corner>
        <TakenOutNotices session={session} snap={snap} />
        <TypedKept session={session} snap={snap} />
        <ToldNotices session={session} />
        <OvertakenNotice overtaken={snap.overtaken} onClose={() => session.closeOvertaken()} />
      </Corner>
      <NotUndoneNotice sentence={snap.notUndone} />
      <p className="visually-hidden" role="status" aria-live="polite">
        {snap.said}
      </p>
    </>
  );
}
