"use client";
/** What lies beside the sheet: a class, or one of the lists that the month is made from. Escape closes it and leads back. */
import type { KeyboardEvent, ReactNode } from "react";
import { keyHandler } from "#app/_parts/commands/keys.ts";
import { OvertakenNotice } from "#app/_parts/overtaken-notice.tsx";
import { type SaveState, saveWords } from "#lib/client/doc-session/save-state.ts";
import { dayWords } from "#lib/formats/dates.ts";
import { classTitle } from "#lib/tide/day-marks.ts";
import { AcceptedPanel, AcceptPanel } from "./accept-panel.tsx";
import { ChangesPanel } from "./changes-panel.tsx";
import { MonthClassPanel } from "./class-panel.tsx";
import { CoachesPanel } from "./coaches-panel.tsx";
import { CopyPanel } from "./copy-panel.tsx";
import { FillPanel } from "./fill-panel.tsx";
import { HolidaysPanel } from "./holidays-panel.tsx";
import { PANEL_COMMANDS } from "./month-commands.ts";
import type { MonthDesk, PanelOf } from "./month-desk.ts";
import { NewClass } from "./new-class.tsx";
import styles from "./panel.module.css";
import { PatternPanel } from "./pattern-panel.tsx";
import { RegularsPanel } from "./regulars-panel.tsx";
import { TakenOutPanel } from "./taken-out-panel.tsx";
import { ThemesPanel } from "./themes-panel.tsx";
import { usePanelFocus } from "./use-panel-focus.ts";

export function MonthPanel({ desk }: { readonly desk: MonthDesk }) {
  const { panel } = desk.choice;
  if (!panel) return null;
  const key = panel.kind === "class" ? `class ${panel.slot}` : panel.kind === "new" ? `new ${panel.date}` : panel.kind;
  return (
    <PanelFrame key={key} desk={desk} title={titleOf(desk, panel)}>
      {contentOf(desk, panel)}
    </PanelFrame>
  );
}

const TITLES = {
  pattern: "The weekly pattern",
  regulars: "Regulars",
  themes: "Themes and promises",
  coaches: "Coaches' times",
  holidays: "Holidays",
  copy: "Copy classes",
  "taken-out": "Classes taken out",
  fill: "Fill the empty classes",
  changes: "Signed off, and changed since",
  accept: "Accept it as it is",
  accepted: "Accepted as they stand",
} as const;

function titleOf({ slot: slotOf, month: { file }, formats: f }: MonthDesk, panel: PanelOf): string {
  if (panel.kind === "new") return `New class, ${dayWords(panel.date, f)}`;
  if (panel.kind !== "class") return TITLES[panel.kind];
  const slot = slotOf(panel.slot);
  return slot ? `${classTitle(file, slot)}, ${dayWords(slot.date, f)}` : "Taken out of the month";
}

function contentOf(desk: MonthDesk, panel: PanelOf): ReactNode {
  switch (panel.kind) {
    case "class":
      return <MonthClassPanel desk={desk} slotId={panel.slot} />;
    case "new":
      return <NewClass desk={desk} date={panel.date} />;
    case "pattern":
      return <PatternPanel desk={desk} />;
    case "regulars":
      return <RegularsPanel desk={desk} />;
    case "themes":
      return <ThemesPanel desk={desk} />;
    case "coaches":
      return <CoachesPanel desk={desk} />;
    case "holidays":
      return <HolidaysPanel desk={desk} />;
    case "copy":
      return <CopyPanel desk={desk} />;
    case "taken-out":
      return <TakenOutPanel desk={desk} />;
    case "changes":
      return <ChangesPanel desk={desk} />;
    case "accept":
      return <AcceptPanel key={panel.findings.join(" ")} desk={desk} ids={panel.findings} />;
    case "accepted":
      return <AcceptedPanel desk={desk} />;
    case "fill":
      return <FillPanel desk={desk} />;
  }
}

interface FrameProps {
  readonly desk: MonthDesk;
  readonly title: string;
  readonly children: ReactNode;
}

function PanelFrame({ desk, title, children }: FrameProps) {
  const { panel, head, close } = usePanelFocus(desk);
  const onKeyDown = (event: KeyboardEvent<HTMLElement>) => {
    const nth = (n: number) => () => desk.acts.putNthPlan(n);
    const run = {
      ...{ "plan-1": nth(1), "plan-2": nth(2), "plan-3": nth(3), "plan-4": nth(4), "plan-5": nth(5) },
      ...{ "plan-6": nth(6), "plan-7": nth(7), "plan-8": nth(8), "plan-9": nth(9) },
    };
    keyHandler(PANEL_COMMANDS, "panel", { run })(event);
    keyHandler(PANEL_COMMANDS, "beside", { run: { close } })(event);
  };
  return (
    <aside ref={panel} className={styles.panel} aria-label={title} onKeyDown={onKeyDown}>
      <header className={styles.head}>
        <h2 ref={head} tabIndex={-1}>
          {title}
        </h2>
        <button type="button" className="button" onClick={close}>
          Close
        </button>
        {UNSAVED.has(desk.month.saveState) && (
          <p className={styles.state} data-state={desk.month.saveState}>
            {saveWords(desk.month)}
          </p>
        )}
      </header>
      <div className={styles.content}>{children}</div>
      <div className={styles.foot}>
        <OvertakenNotice overtaken={desk.month.overtaken} onClose={() => desk.session.closeOvertaken()} />
      </div>
    </aside>
  );
}

/** Said here as well, since the panel may lie over the head of the page that says it. */
const UNSAVED: ReadonlySet<SaveState> = new Set(["offline", "storage-failing", "damaged", "others-first", "ended"]);
