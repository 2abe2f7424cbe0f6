"use client";
/** Under every view: who leads, whether it is heard, asking to lead, what this screen shows, and the way out. */
import { useState } from "react";
import { REFUSAL_WORDS, VIEW_WORDS } from "#lib/line/line-words.ts";
import { type FollowerView, SCREEN_VIEWS } from "#lib/protocol/line-wire.ts";
import styles from "./follow.module.css";
import { isLeaderGone, leadsElsewhere } from "./use-lead.ts";
import type { FloorLine } from "./use-line.ts";
import { useSecond } from "./use-second.ts";
import { hourMinute, hourMinuteSecond } from "./when.ts";

interface Props {
  readonly line: FloorLine;
  readonly view: FollowerView;
  /** Is there something to lead: the card of the class here, and the class not over? Asked once a second. */
  canLead(): boolean;
  onView(view: FollowerView): void;
  /** The class goes on on this screen, the others unasked: when they cannot be reached. */
  onTakeOn(): void;
  onLeave(): void;
}

export function FollowFoot({ line, view, canLead, onView, onTakeOn, onLeave }: Props) {
  useSecond();
  return (
    <footer className={styles.foot}>
      <p role="status" data-contact={line.state.contact}>
        {statusWords(line)}
      </p>
      <div className={styles.acts}>
        {canLead() && <Asking line={line} onTakeOn={onTakeOn} />}
        <label>
          shows
          <select value={view} onChange={(event) => onView(event.target.value as FollowerView)}>
            {SCREEN_VIEWS.filter((one) => one !== "lead").map((one) => (
              <option key={one} value={one}>
                {VIEW_WORDS[one].name}
              </option>
            ))}
          </select>
        </label>
        <button type="button" onClick={onLeave}>
          stop following
        </button>
      </div>
    </footer>
  );
}

/** What can be done about leading: ask, wait, take over from who is gone, go on alone when nobody can be reached. */
function Asking({ line: floorLine, onTakeOn }: { line: FloorLine; onTakeOn(): void }) {
  const [sure, setSure] = useState(false);
  const { state, link } = floorLine;
  const { line, you, contact, followed } = state;
  if (!link || !followed) return null;
  if (contact !== "on") {
    return sure ? (
      <button type="button" className={styles.sure} onClick={onTakeOn}>
        run it here alone?
      </button>
    ) : (
      <button type="button" onClick={() => setSure(true)}>
        run it here
      </button>
    );
  }
  if (!line?.leader)
    return (
      <button type="button" onClick={() => link.lead(false)}>
        lead from here
      </button>
    );
  if (isLeaderGone(floorLine)) {
    return sure ? (
      <button type="button" className={styles.sure} onClick={() => link.lead(true)}>
        lead now?
      </button>
    ) : (
      <button type="button" onClick={() => setSure(true)}>
        lead from here
      </button>
    );
  }
  if (line.asked?.id === you)
    return (
      <button type="button" onClick={link.withdraw}>
        take the question back
      </button>
    );
  return (
    <button type="button" onClick={() => link.lead(false)}>
      ask to lead
    </button>
  );
}

function statusWords({ state, link }: FloorLine): string {
  const { line, you, contact, heardAt, sentence, noLive, refusal, followed } = state;
  if (contact === "refused") return sentence ?? "";
  if (noLive !== null) return noLive;
  if (contact === "connecting") return "Looking for the line of this room.";
  if (contact === "off") {
    const since =
      heardAt === null ? "The studio was not reached yet." : `No contact since ${hourMinuteSecond(heardAt)}.`;
    return followed ? `${since} This screen runs on by itself.` : since;
  }
  if (!line?.leader)
    return followed ? "Nobody leads now. This screen runs on." : "On the line. Nobody leads a class here.";
  const { label, sinceWall } = line.leader;
  const gone = line.screens.find(({ id }) => id === line.leader?.id)?.goneSince ?? null;
  const studioNow = link?.studioNow() ?? null;
  if (gone !== null && studioNow !== null) {
    return `${label} is off the line since ${hourMinuteSecond(Date.now() - (studioNow - gone))}. The class runs on.`;
  }
  if (line.asked?.id === you) return `Asked ${label} to lead. Waiting for the answer.`;
  const leads = leadsElsewhere(state) ? `${label} leads since ${hourMinute(sinceWall)}.` : "";
  return refusal ? `${REFUSAL_WORDS[refusal]} ${leads}` : leads;
}
