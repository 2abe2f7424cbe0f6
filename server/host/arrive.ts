/** The second half of a move, after the studio has left its old place for good. Each step may be done again. */
import { existsSync, rmSync } from "node:fs";
import { removeFence } from "#db/file/fence.ts";
import { renameWhole, writeWhole } from "#db/file/whole-file.ts";
import { fenceAt } from "./fence-at.ts";
import {
  databaseIn,
  folderOf,
  type HostFolder,
  incomingOf,
  type MovedStudio,
  makeInside,
  movedFile,
  type PlacedStudio,
  studioIn,
  whileAlone,
} from "./host-folder.ts";
import { HostRefused } from "./host-refused.ts";
import { proxyTarget, publishMap } from "./hosts-map.ts";
import { askHealth } from "./list-studios.ts";
import { putAside } from "./remove-studio.ts";
import { runLine } from "./run-line.ts";
import { readStudioAddress } from "./studio-names.ts";

export interface StudioMove {
  readonly from: HostFolder;
  readonly to: HostFolder;
  readonly name: string;
  /** Lines of shell, with `$STUDIO` and `$FOLDER`. */
  readonly lines: { readonly stopHere: string; readonly startHere: string; readonly startThere: string };
  readonly at: Date;
  /** Tells the person what is being done. */
  readonly say: (line: string) => void;
}

export interface Arrived {
  /** Where it is now, as it is reached here. */
  readonly studio: PlacedStudio;
  /** Where its old folder is; null where it was put aside before. */
  readonly aside: string | null;
  /** What the two proxies still need, as sentences. */
  readonly proxies: readonly string[];
}

/** `id`: of the fence at the old place. Throws HostRefused; the studio is at the new place then, whether or not it runs. */
export async function arrive(move: StudioMove, id: string): Promise<Arrived> {
  const { from, to, name } = move;
  const [studio, there] = await whileAlone(to, async () => {
    const its = placed(to, name, id);
    // The line that starts it may make the other machine's proxy read its map.
    return [its, await publishMap(to)] as const;
  });
  const starting = runLine(move.lines.startThere, studio);
  const aside = await whileAlone(from, () => leaveForward(move, studio));
  const proxies = [there, await whileAlone(from, () => publishMap(from))];
  const failed = await starting;
  if (failed !== null)
    throw new HostRefused(
      `${name} is in ${studio.folder} now, and was not started there (${failed}). Put that right, then give the same command again.`,
    );
  await answering(name, studio);
  return { studio, aside, proxies: proxies.filter((one) => one !== null) };
}

/** Lifts the fence of the copy that this move made, and gives it its name. */
function placed(to: HostFolder, name: string, id: string): PlacedStudio {
  const [incoming, folder] = [incomingOf(to, name), folderOf(to, name)];
  if (existsSync(incoming)) {
    const fence = fenceAt(databaseIn(incoming));
    if (fence && fence.id !== id)
      throw new HostRefused(`${incoming} is the copy of another move. Nothing was started; look into both places.`);
    removeFence(databaseIn(incoming));
    // It has come back: there is nothing to lead away from here.
    rmSync(movedFile(to, name), { force: true });
    renameWhole(incoming, folder);
  }
  const studio = studioIn(folder, name);
  if (studio) return studio;
  throw new HostRefused(`${name} has left its old place, and is not in ${folder}. Is the disk of ${to.root} mounted?`);
}

function leaveForward({ from, to, name, at }: StudioMove, studio: PlacedStudio): string | null {
  const old = studioIn(folderOf(from, name), name);
  if (!old) return null;
  leadTo(from, studio, to.root);
  return putAside(from, old, at);
}

/** Notes on a host that a studio has left where its host name leads now. To be called while alone on the host. */
export function leadTo(host: HostFolder, { name, env }: PlacedStudio, to: string): void {
  makeInside(host, "moved");
  const forward: MovedStudio = { name, hostName: readStudioAddress(env.origin).hostName, at: proxyTarget(env), to };
  writeWhole(movedFile(host, name), `${JSON.stringify(forward)}\n`);
}

/** A studio with a large database reads every page of it before it answers. */
const ANSWER_WITHIN_MS = 120_000;
const STEP_MS = 50;

async function answering(name: string, { env, folder }: PlacedStudio): Promise<void> {
  const until = Date.now() + ANSWER_WITHIN_MS;
  while (Date.now() < until) {
    if ((await askHealth(proxyTarget(env))).answers !== "no") return;
    await new Promise((done) => setTimeout(done, STEP_MS));
  }
  throw new HostRefused(
    `${name} is in ${folder} now and was started, but does not answer at ${proxyTarget(env)}. Look at its log there: journalctl -u springline@${name}`,
  );
}
