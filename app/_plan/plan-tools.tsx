"use client";
/** Under the header: which view, what is written most, and the class in one line; the menu holds everything else. */
import { ClassLine } from "#app/_band/class-line.tsx";
import { CommandButton } from "#app/_parts/commands/command-button.tsx";
import { COMMON_COMMANDS } from "#app/_parts/commands/common.ts";
import { RedoButton, UndoButton, UndoButtons } from "#app/_parts/commands/undo-buttons.tsx";
import { lateFindButton } from "#app/_parts/find/late-find-here.ts";
import { openKeyHelp } from "#app/_parts/key-help.tsx";
import { LatePart } from "#app/_parts/late-part.tsx";
import type { RailScale } from "#app/_rail/use-scale.ts";
import { hasRounds } from "#app/_session/changes-shown.ts";
import { PlanButton } from "#app/_session/page-acts.tsx";
import { MENU } from "#app/_session/plan-commands.ts";
import type { PlanSession } from "#app/_session/session.ts";
import type { SessionSnapshot } from "#app/_session/session-types.ts";
import { oneLine } from "#lib/notices/notice-words.ts";
import { plural } from "#lib/plan/format.ts";
import { placeOfThread } from "../_session/threads/go-to-place.ts";
import styles from "./plan-tools.module.css";
import { useBandActs } from "./use-band-acts.ts";
import { openThreads } from "./use-named-place.ts";
import type { Page } from "./use-page.ts";

interface PlanToolsProps {
  readonly session: PlanSession;
  readonly snap: SessionSnapshot;
  readonly page: Page;
}

const PLACES = { rail: "rail", "whole-class": "lanes", "read-through": "read", rounds: "rounds" } as const;
const VIEWS = ["rail", "whole-class", "read-through"] as const;

export function PlanTools({ session, snap, page }: PlanToolsProps) {
  const { view, phone } = page;
  const place = PLACES[view];
  return (
    <div className={styles.tools}>
      <fieldset className={styles.views}>
        <legend className="visually-hidden">View of the plan</legend>
        {VIEWS.map((one) => (
          <PlanButton key={one} command={one} place={place} pressed={one === view} className={styles.view ?? ""} />
        ))}
      </fieldset>
      <div className={styles.writing}>
        <PlanButton command="add" place={place} />
        {!phone && <PlanButton command="fit" place={place} />}
        {session.canWrite && phone && <UndoButton session={session} can={snap} />}
        {session.canWrite && !phone && <UndoButtons session={session} can={snap} className={styles.undo ?? ""} />}
      </div>
      <ClassLine snap={snap} {...useBandActs(page)} />
    </div>
  );
}

interface MenuProps extends PlanToolsProps {
  readonly scale: RailScale;
}

const EDITION_PAGES = [
  ["/print", "Print sheet"],
  ["/crew", "Crew sheet"],
  ["/classes", "Classes taught"],
] as const;

/** What the menu holds: the rest of the plan's commands, the height of a minute, and the pages of the newest edition. */
export function PlanMenu({ session, snap, page, scale }: MenuProps) {
  const { edition } = snap.state;
  const { view, phone } = page;
  return (
    <>
      {phone && <PlanButton command="fit" />}
      {phone && session.canWrite && <RedoButton session={session} can={snap} />}
      {MENU.map((command) => (
        <PlanButton key={command} command={command} place={PLACES[view]} />
      ))}
      {view === "rail" && <Height scale={scale} />}
      <OpenThreads snap={snap} />
      <a href={`/api/plans/${session.planId}/threads.jsonld`} download>
        Save the threads as a file
      </a>
      {session.me.roles.includes("lead") && hasRounds(snap) && <a href={`/plans/${session.planId}/marks`}>Marks</a>}
      <PlanButton command="legend" />
      <LatePart part={lateFindButton} props={{}} meanwhile={null} />
      <CommandButton
        command={COMMON_COMMANDS.commands["list-keys"]}
        place="page"
        className={styles.keys ?? ""}
        onRun={openKeyHelp}
      />
      {(edition > 0 || session.origin) && <hr />}
      {session.origin && (
        <a href={`/editions/${session.origin.planId}/${session.origin.number}`}>
          Made from: {session.origin.title}, edition {session.origin.number}
        </a>
      )}
      {edition > 0 && <a href={`/editions/${session.planId}`}>All editions</a>}
      {edition > 0 &&
        EDITION_PAGES.map(([path, words]) => (
          <a key={path} href={`/editions/${session.planId}/${edition}${path}`}>
            {words}
          </a>
        ))}
    </>
  );
}

const MOST_THREADS = 8;
const FIRST_WORDS = 40;

/** A link to each open thread, with its first words. */
function OpenThreads({ snap: { plan, threads } }: Pick<MenuProps, "snap">) {
  const open = openThreads(plan, threads);
  if (open.length === 0) return null;
  return (
    <fieldset>
      <legend>{plural(open.length, "open thread")}</legend>
      {open.slice(0, MOST_THREADS).map(({ id, comments: [first] }) => (
        <a key={id} href={placeOfThread(id)}>
          {first?.authorName}: {oneLine(first?.body ?? "", FIRST_WORDS)}
        </a>
      ))}
      {open.length > MOST_THREADS && <p className="quiet small">and {open.length - MOST_THREADS} more</p>}
    </fieldset>
  );
}

function Height({ scale }: { readonly scale: RailScale }) {
  return (
    <fieldset className={styles.height}>
      <legend>Height of a minute</legend>
      <button type="button" className="button" disabled={scale.isLowest} onClick={() => scale.step(-1)}>
        Shorter
      </button>
      <button type="button" className="button" disabled={scale.isHighest} onClick={() => scale.step(1)}>
        Taller
      </button>
    </fieldset>
  );
}
