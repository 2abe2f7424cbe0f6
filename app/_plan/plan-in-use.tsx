"use client";
/** A plan that is open: the band on top, then the plan itself with its panel, and what lies over them. */
import { useEffect } from "react";
import { Band } from "#app/_band/band.tsx";
import { StateActs } from "#app/_margin/state-acts.tsx";
import { useUndoKeys } from "#app/_parts/commands/use-undo-keys.ts";
import { PageKeys } from "#app/_parts/key-help.tsx";
import { useLateParts } from "#app/_parts/late-part.tsx";
import { useHeight } from "#app/_parts/use-height.ts";
import { PageActsContext, PlanButton } from "#app/_session/page-acts.tsx";
import { PLAN_KEYS } from "#app/_session/plan-commands.ts";
import type { PlanSession } from "#app/_session/session.ts";
import { useSnapshot } from "#app/_session/use-session.ts";
import { Dialogs } from "./dialogs.tsx";
import { useFocusKept } from "./focus.ts";
import { LATE_PARTS } from "./late-parts.ts";
import { Messages } from "./messages.tsx";
import { Middle } from "./middle.tsx";
import { Notices } from "./notices.tsx";
import { Panel } from "./panel/panel.tsx";
import styles from "./plan-page.module.css";
import { useBandActs } from "./use-band-acts.ts";
import { usePage } from "./use-page.ts";

const BESIDE = { rail: "rail", "whole-class": "lanes", "read-through": "read-through" } as const;

export function PlanInUse({ session }: { readonly session: PlanSession }) {
  const snap = useSnapshot(session);
  const page = usePage(session);
  const { view, phone, sheetOpen } = page;
  const [band, bandHeight] = useHeight<HTMLElement>();
  const bandActs = useBandActs(session, page);
  useTitle(snap.plan.title);
  useUndoKeys(session);
  useLateParts(LATE_PARTS);
  useFocusKept(view);
  const panelOpen = sheetOpen || (!phone && (view === "rail" || snap.selectedId !== null));
  const shown = { session, snap, page };
  return (
    <PageActsContext value={page.acts}>
      <main className={styles.page} data-view={view} style={{ "--band": `${phone ? 0 : bandHeight}px` }}>
        <Band ref={band} session={session} snap={snap} {...bandActs}>
          <PlanButton command="fit" />
          <PlanButton command="rehearse" />
          <StateActs session={session} me={session.me} />
        </Band>
        <Notices session={session} snap={snap} />
        <div className={styles.columns} data-alone={!panelOpen || undefined}>
          <Middle {...shown} panelOpen={panelOpen} />
          {panelOpen && (
            <Panel
              ref={page.panel}
              {...{ session, snap, beside: BESIDE[view], asSheet: phone, hasMargin: page.wide && view === "rail" }}
            />
          )}
        </div>
        <Messages session={session} snap={snap} />
        <Dialogs {...shown} />
        <PageKeys of={PLAN_KEYS} />
      </main>
    </PageActsContext>
  );
}

function useTitle(title: string): void {
  useEffect(() => {
    document.title = `${title.trim() || "Plan without a title"} · Springline`;
  }, [title]);
}
