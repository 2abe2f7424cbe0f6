/** For any log: from an undo on, the class is where the log without that touch puts it. */
import { expect, test } from "vitest";
import { buildCard } from "#lib/card/card.ts";
import { actEvent, endOnTimeAt, retimeEvent } from "#lib/floor/acts.ts";
import { classLogUntil } from "#lib/floor/class-log.ts";
import { extension } from "#lib/floor/extension.ts";
import type { FloorEvent, FloorLog } from "#lib/floor/log.ts";
import { floorNow, floorView, lastTouch, latenessAt, positionAt, standingLog } from "#lib/floor/now.ts";
import { Dice } from "#tests/support/dice.ts";
import { often } from "#tests/support/long.ts";
import { samplePlan } from "../unit/card/sample-plan.ts";

const RUNS = often(80, 300);
const T0 = 1_000_000;
const card = buildCard({
  studio: { name: "Tholepin Strength", town: "Port Ellery" },
  planId: "rows",
  number: 1,
  room: { id: "harbour", name: "Harbour room" },
  plan: samplePlan(),
  issuedAt: 0,
  expiresAt: 86_400_000,
});

function randomTouch(log: FloorLog, at: number, dice: Dice): FloorEvent | null {
  const kind = dice.one(["hold", "next", "back", "end", "more", "on-time", "seek"] as const);
  const { held, ended } = positionAt(card, log, at);
  if (ended) return null;
  if (kind === "more") return extension(card, log, 15, at)?.event ?? null;
  if (kind === "seek") return { type: "seek", at, to: dice.upTo(260) };
  if (kind === "on-time") {
    const answer = endOnTimeAt(card, log, at);
    return answer.possible ? retimeEvent(answer, at) : null;
  }
  if (kind === "end" && dice.upTo(4) > 0) return null;
  return actEvent(card, log, kind === "hold" && held ? "resume" : kind, at);
}

/** The same, worked out by removing the touch from the list. */
function without(log: FloorLog, touch: FloorEvent): FloorLog {
  return log.filter((event) => event !== touch);
}

test(`[INV-23] ${RUNS} random classes with mistakes undone`, () => {
  const dice = new Dice(2311);
  let undone = 0;
  for (let run = 0; run < RUNS; run++) {
    let log: FloorLog = [{ type: "start", at: T0 }];
    /** Only events that were not undone. */
    let straight: FloorLog = log;
    let at = T0;
    for (let n = 0; n < 12; n++) {
      at += dice.upTo(25_000);
      const touch = lastTouch(card, log, at);
      const say = `run ${run}, ${JSON.stringify(log)}`;
      const was = log;
      if (touch && dice.upTo(3) === 0) {
        undone++;
        log = [...log, { type: "undo", at }];
        straight = without(straight, touch);
        for (const later of [0, 1, 700, 4000, 31_000, 300_000]) {
          expect(floorView(card, log, at + later), say).toEqual(floorView(card, straight, at + later));
          expect(latenessAt(card, log, at + later), say).toBe(latenessAt(card, straight, at + later));
        }
        expect(floorNow(card, log), say).toBe(floorNow(card, straight));
      } else {
        const made = randomTouch(log, at, dice);
        if (made)
          [log, straight] = [
            [...log, made],
            [...straight, made],
          ];
      }
      expect(standingLog(card, log), say).toEqual(straight);
      // The past is fixed: what was shown before does not change afterwards.
      expect(positionAt(card, log, at - 1), say).toEqual(positionAt(card, was, at - 1));
    }
    const of = { sessionId: "a".repeat(32), kind: "class", clock: { mono: at, wall: 0 } } as const;
    const [told, plain] = [log, straight].map((one) => classLogUntil(card, one, at + 1000, of));
    expect({ ...told, undone: null }).toEqual({ ...plain, undone: null });
  }
  expect(undone).toBeGreaterThan(RUNS);
});
