/**
 * Moves a studio to another host's folder while people write in it. The database is copied while the studio runs; then it is
 * stopped, the difference is written, and it starts at the new place. The studio is at its old place until a fence stands there
 * that says it has moved, which is one rename on the disk, and at the new place from then on. A move that was cut off before
 * that has changed nothing: start the studio again, or give the command again. After that the command given again goes on.
 */
import { randomUUID } from "node:crypto";
import { existsSync, mkdirSync, readFileSync, rmSync } from "node:fs";
import { join } from "node:path";
import { copyDatabase, foldWriteAheadLog } from "#db/file/copy.ts";
import { removeFence, writeFence } from "#db/file/fence.ts";
import { syncNames, writeWhole } from "#db/file/whole-file.ts";
import { acquireWriterLock, DatabaseInUse, isInUse, type WriterLock } from "#db/file/writer-lock.ts";
import { databaseBytes, refuseFull } from "#server/backup/folder.ts";
import { refuseStray, refuseTaken } from "./add-studio.ts";
import { type Arrived, arrive, leadTo, type StudioMove } from "./arrive.ts";
import { type Difference, hashBlocks, writeDifference } from "./changed-blocks.ts";
import { fenceAt } from "./fence-at.ts";
import {
  databaseIn,
  ENV_FILE,
  folderOf,
  incomingOf,
  type MovedStudio,
  makeInside,
  movedStudios,
  type PlacedStudio,
  studioIn,
  whileAlone,
} from "./host-folder.ts";
import { HostRefused } from "./host-refused.ts";
import { publishMap } from "./hosts-map.ts";
import { freePortOf } from "./ports.ts";
import { runLine } from "./run-line.ts";
import { studioEnvText } from "./studio-env.ts";
import { readStudioAddress, refuseName } from "./studio-names.ts";

export interface Moved extends Arrived {
  /** ms from the order to stop until it answered at the new place; null where an earlier command had stopped it. */
  readonly stoodStillMs: number | null;
  /** What had changed while the first copy was made. */
  readonly difference: Difference | null;
}

/** Throws HostRefused with one sentence that says where the studio is. */
export async function moveStudio(move: StudioMove): Promise<Moved> {
  const { from, to, name } = move;
  refuseName(name);
  if (from.root === to.root) throw new HostRefused(`${name} is in ${to.root} already.`);
  const here = studioIn(folderOf(from, name), name);
  const gone = here ? fenceAt(databaseIn(here.folder)) : undefined;
  if (!here || gone?.state === "moved") return goOn(move, gone?.id);
  if (gone) throw new HostRefused(`${name} has not arrived here yet from ${gone.place}. Finish the move there first.`);
  const moving = takeMove(here);
  try {
    return await moveFrom(move, here);
  } finally {
    moving.release();
  }
}

/** An earlier command has brought it past the point from which there is no way back. */
async function goOn(move: StudioMove, id: string | undefined): Promise<Moved> {
  const { from, to, name } = move;
  const forward = movedStudios(from).find((one) => one.name === name);
  if (id === undefined && forward && forward.to !== to.root) return ledOn(move, forward);
  if (id === undefined && !forward) throw new HostRefused(`There is no studio ${name} in ${from.root}.`);
  move.say(`${name} has left this place already; it is started at the new one.`);
  return { ...(await arrive(move, id ?? "")), stoodStillMs: null, difference: null };
}

/** It has left before, and has moved on since: the way to it is all that changes here. */
async function ledOn({ from, to, name }: StudioMove, forward: MovedStudio): Promise<Moved> {
  const there = studioIn(folderOf(to, name), name);
  if (!there || readStudioAddress(there.env.origin).hostName !== forward.hostName)
    throw new HostRefused(`The studio ${name} has moved to ${forward.to} already. Move it from there.`);
  const proxy = await whileAlone(from, () => {
    leadTo(from, there, to.root);
    return publishMap(from);
  });
  const proxies = proxy === null ? [] : [proxy];
  return { studio: there, aside: null, proxies, stoodStillMs: null, difference: null };
}

function takeMove({ name, folder }: PlacedStudio): WriterLock {
  try {
    return acquireWriterLock(join(folder, "moving"));
  } catch (error) {
    if (error instanceof DatabaseInUse) throw new HostRefused(`${name} is being moved by another command.`);
    throw error;
  }
}

async function moveFrom(move: StudioMove, here: PlacedStudio): Promise<Moved> {
  const database = databaseIn(here.folder);
  if (!existsSync(database))
    throw new HostRefused(`${move.name} has no database yet. Remove it here and add it there instead.`);
  const id = randomUUID();
  const known = await firstCopy(move, here, id);
  const wasRunning = isInUse(database);
  const from = performance.now();
  let lock: WriterLock | undefined;
  let difference: Difference;
  const letEnd = heldBack(move);
  try {
    lock = await stopped(move, here);
    difference = await lastDifference(move, here, known);
    writeFence(database, { state: "moved", id, place: move.to.root, at: move.at.getTime() });
  } catch (error) {
    letEnd();
    throw await takenBack(move, here, { error, wasRunning, lock });
  }
  // The fence keeps everybody out from here on.
  lock.release();
  const arrived = await arrive(move, id).finally(letEnd);
  return { ...arrived, stoodStillMs: performance.now() - from, difference };
}

/** A signal that comes while nobody can write waits these seconds; killed, the command is given again. */
function heldBack({ name, say }: StudioMove): () => void {
  const wait = () => say(`${name} is between two places; this ends in a moment.`);
  for (const signal of ["SIGINT", "SIGTERM"] as const) process.on(signal, wait);
  return () => {
    for (const signal of ["SIGINT", "SIGTERM"] as const) process.off(signal, wait);
  };
}

/** Makes the place and copies the running studio into it. Resolves with the hashes of the copy's blocks. */
async function firstCopy(move: StudioMove, here: PlacedStudio, id: string): Promise<readonly string[]> {
  const { from, to, name, at } = move;
  const [incoming, database] = [incomingOf(to, name), databaseIn(here.folder)];
  await refuseFull(to.root, databaseBytes(database), "the studio");
  await whileAlone(to, async () => {
    if (studioIn(folderOf(to, name), name))
      throw new HostRefused(`There is a studio ${name} in ${to.root}. Remove that one first, or rename this one.`);
    refuseStray(folderOf(to, name));
    refuseTaken(to, name, readStudioAddress(here.env.origin).hostName);
    refuseForeign(move);
    rmSync(incoming, { recursive: true, force: true });
    makeInside(to, "incoming");
    mkdirSync(join(incoming, "data"), { recursive: true, mode: 0o700 });
    writeFence(databaseIn(incoming), { state: "arriving", id, place: from.root, at: at.getTime() });
    const { address, folder: own = to.root } = to.settings;
    const env = { ...here.env, dataDir: join(own, name, "data"), host: address, port: await freePortOf(to) };
    const before = readFileSync(join(here.folder, ENV_FILE), "utf8");
    writeWhole(join(incoming, ENV_FILE), studioEnvText(name, env, before));
  });
  move.say(`Copying ${name} while it runs ...`);
  await copyDatabase(database, databaseIn(incoming));
  return hashBlocks(databaseIn(incoming));
}

/** What lies there may be what a move from a third place is bringing. */
function refuseForeign({ from, to, name }: StudioMove): void {
  const fence = fenceAt(databaseIn(incomingOf(to, name)));
  if (fence && fence.place !== from.root)
    throw new HostRefused(`${name} is on its way to ${to.root} from ${fence.place}. Finish that move first.`);
}

/** The program ends within 20 s whatever hangs, and its service manager waits for 30. */
const STOPPED_WITHIN_MS = 35_000;
const STEP_MS = 20;

/** Stops the studio and takes its writer lock: until this process ends nobody can start it again. */
async function stopped({ name, lines, say }: StudioMove, here: PlacedStudio): Promise<WriterLock> {
  say(`Stopping ${name} ...`);
  const failed = await runLine(lines.stopHere, here);
  if (failed !== null) throw new HostRefused(`${name} could not be stopped (${failed}).`);
  const until = Date.now() + STOPPED_WITHIN_MS;
  for (;;) {
    try {
      return acquireWriterLock(databaseIn(here.folder));
    } catch (error) {
      if (!(error instanceof DatabaseInUse)) throw error;
      if (Date.now() > until) throw new HostRefused(`${name} did not stop: ${error.message}`);
    }
    await new Promise((done) => setTimeout(done, STEP_MS));
  }
}

async function lastDifference(
  { to, name }: StudioMove,
  here: PlacedStudio,
  known: readonly string[],
): Promise<Difference> {
  const [database, incoming] = [databaseIn(here.folder), incomingOf(to, name)];
  foldWriteAheadLog(database);
  if (databaseBytes(`${database}-wal`) > 0)
    throw new HostRefused("Another program has the database open, so its last changes cannot be moved. End it first.");
  const difference = await writeDifference(database, databaseIn(incoming), known);
  // A secret that is set among the settings comes with them.
  const secret = join(here.folder, "data", "secret");
  if (existsSync(secret)) writeWhole(join(incoming, "data", "secret"), readFileSync(secret, "utf8"));
  for (const folder of [join(incoming, "data"), incoming]) syncNames(folder);
  return difference;
}

interface Cut {
  readonly error: unknown;
  readonly wasRunning: boolean;
  readonly lock: WriterLock | undefined;
}

/** Nothing has been decided yet: the studio goes on where it was. Resolves with what to throw. */
async function takenBack(move: StudioMove, here: PlacedStudio, { error, wasRunning, lock }: Cut): Promise<HostRefused> {
  try {
    // It may have got its name before the disk failed. The other copy keeps its own fence.
    if (lock) removeFence(databaseIn(here.folder));
    rmSync(incomingOf(move.to, move.name), { recursive: true, force: true });
  } catch {
    // Whether it starts again tells more than why this failed.
  }
  lock?.release();
  const why = error instanceof Error ? error.message : String(error);
  const failed = wasRunning && !isInUse(databaseIn(here.folder)) ? await runLine(move.lines.startHere, here) : null;
  const where = failed === null ? `It goes on in ${here.folder}.` : `Start it again in ${here.folder} (${failed}).`;
  return new HostRefused(`${move.name} was not moved: ${why} ${where}`);
}
