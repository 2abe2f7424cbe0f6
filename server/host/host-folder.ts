/**
 * One folder with all studios of a machine. A studio is a folder in it with `studio.env` and `data`: what these folders say is
 * what is so, and the proxy's map is written from them. `host.json` holds the host's own settings, where they differ.
 */
import { existsSync, mkdirSync, readdirSync, readFileSync, rmSync, statSync } from "node:fs";
import { join, resolve } from "node:path";
import * as z from "zod";
import { acquireWriterLock, DatabaseInUse, type WriterLock } from "#db/file/writer-lock.ts";
import { DATABASE_NAME } from "#server/base/env.ts";
import { HostRefused } from "./host-refused.ts";
import { readStudioEnv, type StudioEnv } from "./studio-env.ts";
import { OWN_FOLDERS } from "./studio-names.ts";

export const ENV_FILE = "studio.env";
export const MAP_FILE = "hosts.map";

const hostSettings = z.strictObject({
  /** The address on which its studios listen, and the proxy finds them. */
  address: z.string().min(1).default("127.0.0.1"),
  ports: z
    .tuple([z.number().int().min(1024).max(65_535), z.number().int().min(1024).max(65_535)])
    .default([4400, 5399]),
  /** The socket on which the running HAProxy takes changes of its map. */
  proxySocket: z.string().min(1).default("/run/haproxy/admin.sock"),
  /** The folder's path on its own machine, where that is not the path it is reached by here. */
  folder: z.string().startsWith("/").optional(),
});
type HostSettings = z.infer<typeof hostSettings>;

export interface PlacedStudio {
  readonly name: string;
  readonly folder: string;
  readonly env: StudioEnv;
}

/** A studio that has left: where its host name leads now. */
const movedStudio = z.strictObject({
  name: z.string(),
  hostName: z.string(),
  /** "10.0.0.7:4400" */
  at: z.string(),
  /** The folder that it moved to. */
  to: z.string(),
});
export type MovedStudio = z.infer<typeof movedStudio>;

export interface HostFolder {
  /** As it is reached here. */
  readonly root: string;
  readonly settings: HostSettings;
}

/** Throws HostRefused. */
export function openHost(path: string): HostFolder {
  const root = resolve(path);
  if (!existsSync(root) || !statSync(root).isDirectory())
    throw new HostRefused(
      `There is no folder ${root} for studios. Make it (install -d -m 700 -o springline ${root}), or set SPRINGLINE_STUDIOS to another one.`,
    );
  return { root, settings: readSettings(join(root, "host.json")) };
}

function readSettings(file: string): HostSettings {
  if (!existsSync(file)) return hostSettings.parse({});
  let said: unknown;
  try {
    said = JSON.parse(readFileSync(file, "utf8"));
  } catch {
    throw new HostRefused(`${file} is not JSON. Correct it, or remove it for the usual settings.`);
  }
  const parsed = hostSettings.safeParse(said);
  if (parsed.success) return parsed.data;
  const issue = parsed.error.issues[0];
  throw new HostRefused(`${file} cannot be used: ${issue?.path.join(".")}: ${issue?.message}.`);
}

export const folderOf = ({ root }: HostFolder, name: string): string => join(root, name);
export const incomingOf = ({ root }: HostFolder, name: string): string => join(root, OWN_FOLDERS.incoming, name);
export const movedFile = ({ root }: HostFolder, name: string): string => join(root, OWN_FOLDERS.moved, `${name}.json`);

/** The data of a studio by the path that its folder is reached by here. */
export const databaseIn = (folder: string): string => join(folder, "data", DATABASE_NAME);

/** How the names of folders begin that were not finished. */
export const UNFINISHED = ".new-";

/** The studio in that folder; undefined where none is. Throws HostRefused where its settings cannot be read. */
export function studioIn(folder: string, name: string): PlacedStudio | undefined {
  const file = join(folder, ENV_FILE);
  if (!existsSync(file)) return undefined;
  const env = readStudioEnv(readFileSync(file, "utf8"));
  if (env) return { name, folder, env };
  throw new HostRefused(`${file} lacks SPRINGLINE_URL, SPRINGLINE_DATA or PORT, or one of them is no use. Correct it.`);
}

/** Nothing where there is no such folder. Throws HostRefused when a file lies in its place. */
function namesIn(folder: string): string[] {
  const there = statSync(folder, { throwIfNoEntry: false });
  if (!there) return [];
  if (there.isDirectory()) return readdirSync(folder).sort();
  throw new HostRefused(`${folder} is not a folder, and the host needs one of that name. Move it away.`);
}

const studiosUnder = (folder: string): PlacedStudio[] =>
  namesIn(folder).flatMap((name) => (name.startsWith(".") ? [] : (studioIn(join(folder, name), name) ?? [])));

/** By name. */
export const studiosOf = ({ root }: HostFolder): readonly PlacedStudio[] => studiosUnder(root);
/** Those on their way here. */
export const incomingStudios = ({ root }: HostFolder): readonly PlacedStudio[] =>
  studiosUnder(join(root, OWN_FOLDERS.incoming));

export function movedStudios({ root }: HostFolder): readonly MovedStudio[] {
  const folder = join(root, OWN_FOLDERS.moved);
  const names = namesIn(folder).filter((name) => name.endsWith(".json"));
  return names.map((name) => movedStudio.parse(JSON.parse(readFileSync(join(folder, name), "utf8"))));
}

export function makeInside(host: HostFolder, name: keyof typeof OWN_FOLDERS): string {
  const folder = join(host.root, OWN_FOLDERS[name]);
  mkdirSync(folder, { recursive: true, mode: 0o700 });
  return folder;
}

/** How long one command waits for another, ms. */
const WAIT_MS = 10_000;
const STEP_MS = 100;

/** Runs `work` while no other command changes this host. Throws HostRefused when another one does not end. */
export async function whileAlone<T>(host: HostFolder, work: () => Promise<T> | T): Promise<T> {
  const lock = await takeLock(host);
  try {
    for (const name of readdirSync(host.root))
      if (name.startsWith(UNFINISHED)) rmSync(join(host.root, name), { recursive: true, force: true });
    return await work();
  } finally {
    lock.release();
  }
}

async function takeLock({ root }: HostFolder): Promise<WriterLock> {
  for (let waited = 0; ; waited += STEP_MS) {
    try {
      return acquireWriterLock(join(root, "host"));
    } catch (error) {
      if (!(error instanceof DatabaseInUse)) throw error;
      if (waited >= WAIT_MS)
        throw new HostRefused(
          `Another command is at work on ${root} and has not ended in ${WAIT_MS / 1000} s. Wait for it, then try again.`,
        );
    }
    await new Promise((done) => setTimeout(done, STEP_MS));
  }
}
