"use client";
/** What is open on a plan's page (view, panel, sheet, dialog), and what the page's commands do to it. */
import { type RefObject, useMemo, useRef, useState } from "react";
import { useMedia } from "#app/_parts/use-media.ts";
import { REHEARSALS_HASH } from "#app/_rehearsal/rehearsals-hash.ts";
import { type PageActs, pageActs } from "#app/_session/page-acts.tsx";
import type { PlanSession } from "#app/_session/session.ts";
import type { FindingLevel } from "#lib/plan/schema.ts";
import { findingWalk } from "./go-to-finding.ts";
import { choosing, type OpenDialog, type Parts, pageCommands, picking, showing, walking } from "./page-commands.ts";
import { type PlanView, usePlanView } from "./use-plan-view.ts";

export interface Page {
  readonly view: PlanView;
  readonly phone: boolean;
  /** What is beside the plan on a wide screen lies over it: on a phone, and where plates beside it would be too narrow to read. */
  readonly asSheet: boolean;
  /** The item whose plate is open on the rail. */
  readonly openId: string | null;
  /** What the panel shows, beside or over the plan; null while it is closed. */
  readonly panelShows: "class" | "item" | null;
  readonly dialog: OpenDialog;
  readonly panel: RefObject<HTMLElement | null>;
  readonly acts: PageActs;
  /** To the next finding of a level; without one, of the worst. */
  goToFinding(level?: FindingLevel): void;
  /** Closes the plate of the item that is chosen now: of one that was just added, so that one can go on adding. */
  shut(): void;
  closeDialog(): void;
}

const PHONE = "(max-width: 759px)";
const TABLET = "(max-width: 1179px)";

export function usePage(session: PlanSession, selectedId: string | null): Page {
  const phone = useMedia(PHONE);
  const narrow = useMedia(TABLET);
  const [dialog, setDialog] = useState<OpenDialog>(() => (location.hash === REHEARSALS_HASH ? "rehearsals" : null));
  const [sheetOpen, setSheetOpen] = useState(false);
  /** The chosen item while its plate is closed: walked over by keys, or closed again. */
  const [shutId, setShutId] = useState<string | null>(null);
  const [view, openView] = usePlanView();
  const panel = useRef<HTMLElement>(null);
  const openId = view === "rail" && selectedId !== shutId ? selectedId : null;
  const shown = useRef({ view, openId });
  shown.current = { view, openId };
  const { acts, goToFinding } = useMemo(() => {
    const parts: Parts = { session, panel, shown, setDialog, setSheetOpen, setShutId, openView };
    const show = showing(parts);
    const goToFinding = findingWalk(session, show);
    const commands = pageCommands(parts, goToFinding);
    return {
      acts: walking(pageActs(session, commands, { pick: picking(parts), stand: choosing(parts), show }), parts),
      goToFinding,
    };
  }, [session, openView]);
  const beside = view !== "rail" && view !== "rounds" && selectedId !== null && (!phone || sheetOpen);
  const panelShows = beside ? "item" : sheetOpen && selectedId === null ? "class" : null;
  const shut = () => setShutId(session.getSnapshot().selectedId);
  const closeDialog = () => setDialog(null);
  const asSheet = phone || (narrow && view === "rail");
  return { view, phone, asSheet, openId, panelShows, dialog, panel, acts, goToFinding, shut, closeDialog };
}
