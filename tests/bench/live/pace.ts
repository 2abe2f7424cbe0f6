/** The pace of a load. */
import { setTimeout as sleep } from "node:timers/promises";

export const wait = (seconds: number): Promise<void> => sleep(seconds * 1000);

/** Calls `act` evenly at a rate with 0, 1, 2 …, until it is stopped. Late calls are made up for. */
export function steadily(perSecond: number, act: (turn: number) => void): () => void {
  const began = performance.now();
  let turn = 0;
  let timer: NodeJS.Timeout;
  const tick = () => {
    const due = Math.floor(((performance.now() - began) / 1000) * perSecond);
    for (; turn < due; turn++) act(turn);
    timer = setTimeout(tick, 1);
  };
  tick();
  return () => clearTimeout(timer);
}

/** Waits for something that must happen; fails with its name. */
export async function until(what: string, holds: () => boolean, seconds = 60): Promise<void> {
  const from = performance.now();
  while (!holds()) {
    if (performance.now() - from > seconds * 1000) throw new Error(`in ${seconds} s it did not happen: ${what}`);
    await sleep(1);
  }
}
