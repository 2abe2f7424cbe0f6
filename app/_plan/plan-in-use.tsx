"use client";
/** A plan that is open: the header, the tools, then the plan itself with its panel, and what lies over them. */
import { useEffect, useMemo } from "react";
import { Band } from "#app/_band/band.tsx";
import { MoreMenu } from "#app/_band/more-menu.tsx";
import { StateActs } from "#app/_margin/state-acts.tsx";
import { useUndoKeys } from "#app/_parts/commands/use-undo-keys.ts";
import { lateFindHere } from "#app/_parts/find/late-find-here.ts";
import { PageKeys } from "#app/_parts/key-help.tsx";
import { LatePart, useLateParts } from "#app/_parts/late-part.tsx";
import { useHeight } from "#app/_parts/use-height.ts";
import { useScale } from "#app/_rail/use-scale.ts";
import { lateComparing, lateReadCount } from "#app/_rounds/late-rounds.ts";
import { hasRounds } from "#app/_session/changes-shown.ts";
import { PageActsContext } from "#app/_session/page-acts.tsx";
import { planKeys } from "#app/_session/plan-commands.ts";
import type { PlanSession } from "#app/_session/session.ts";
import { useSnapshot } from "#app/_session/use-session.ts";
import { planTitle } from "#lib/plan/plan-title.ts";
import { Dialogs } from "./dialogs.tsx";
import { useFocusAtStart, useFocusKept } from "./focus.ts";
import { latePartsOf } from "./late-parts.ts";
import { Messages } from "./messages.tsx";
import { Middle } from "./middle.tsx";
import { Notices } from "./notices.tsx";
import { Panel } from "./panel/panel.tsx";
import styles from "./plan-page.module.css";
import { PlanMenu } from "./plan-tools.tsx";
import { useNamedLine } from "./use-named-line.ts";
import { useNamedPlace } from "./use-named-place.ts";
import { usePage } from "./use-page.ts";
import { usePageKeys } from "./use-page-keys.ts";

const BESIDE = { rail: "rail", "whole-class": "lanes", "read-through": "read-through", rounds: "rail" } as const;

export function PlanInUse({ session }: { readonly session: PlanSession }) {
  const snap = useSnapshot(session);
  const page = usePage(session, snap.selectedId);
  const { view, asSheet, panelShows } = page;
  const [band, bandHeight] = useHeight<HTMLElement>();
  const scale = useScale(session.planId);
  useTitle(snap.plan.title);
  useUndoKeys(session);
  useLateParts(useMemo(() => latePartsOf(session), [session]));
  useFocusKept(view);
  usePageKeys(page.acts);
  useNamedPlace(snap, page.acts.show);
  useNamedLine(session, page.acts.show);
  useFocusAtStart(view);
  const { writes } = snap.rights;
  const keys = useMemo(() => planKeys({ writes, leads: session.me.roles.includes("lead") }), [session, writes]);
  const shown = { session, snap, page };
  return (
    <PageActsContext value={page.acts}>
      <main className={styles.page} data-view={view} style={{ "--band": `${bandHeight}px` }}>
        <Band ref={band} session={session} snap={snap} read={<ReadSoFar {...shown} />}>
          <StateActs session={session} me={session.me} />
          <MoreMenu>
            <PlanMenu {...shown} scale={scale} />
          </MoreMenu>
        </Band>
        <Notices session={session} snap={snap} />
        <div className={styles.columns} data-alone={panelShows === null || asSheet || undefined}>
          <Middle {...shown} scale={scale} />
          {panelShows && <Panel ref={page.panel} {...{ session, snap, beside: BESIDE[view], asSheet }} />}
        </div>
        <Messages session={session} snap={snap} />
        {hasRounds(snap) && <LatePart part={lateComparing} props={{ session }} meanwhile={null} />}
        <Dialogs {...shown} />
        <PageKeys of={keys} />
        <LatePart part={lateFindHere} props={{}} meanwhile={null} />
      </main>
    </PageActsContext>
  );
}

function ReadSoFar({ session, snap }: Pick<Parameters<typeof Middle>[0], "session" | "snap">) {
  return hasRounds(snap) ? <LatePart part={lateReadCount} props={{ session }} meanwhile={null} /> : null;
}

function useTitle(title: string): void {
  useEffect(() => {
    document.title = `${planTitle(title)} · Springline`;
  }, [title]);
}
