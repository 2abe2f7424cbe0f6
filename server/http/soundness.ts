/** Looks at the whole database again and again while the server runs, so that damage is known before it spreads to every backup. */
import { quickCheck } from "#db/soundness.ts";
import type { Log } from "#server/log.ts";

export interface Soundness {
  /** What is wrong with the file, as last looked; null while nothing is known to be. */
  readonly damage: string | null;
}

export interface SoundnessSetup {
  readonly file: string;
  readonly log: Pick<Log, "error" | "warn">;
  /** Between two looks, ms. Our own choice: the file is read whole each time, and damage comes of failing disks, seldom. */
  readonly everyMs?: number;
}

export interface SoundnessWatch extends Soundness {
  /** Looks now; resolves when it has looked. Never rejects. */
  look(): Promise<void>;
  stop(): void;
}

const EVERY_MS = 6 * 60 * 60 * 1000;

/** The first look is at the start, when the database is opened; this one comes back for the rest. */
export function watchSoundness({ file, log, everyMs = EVERY_MS }: SoundnessSetup): SoundnessWatch {
  let damage: string | null = null;
  const look = async () => {
    try {
      damage = (await quickCheck(file)) ?? null;
      if (damage) log.error({ damage }, "the database is damaged: stop the server and restore the latest backup");
    } catch (err) {
      log.warn({ err }, "the database could not be looked through; trying again later");
    }
  };
  const timer = setInterval(look, everyMs);
  timer.unref();
  return {
    get damage() {
      return damage;
    },
    look,
    stop: () => clearInterval(timer),
  };
}
