/** An export as one zip file, and back. Streams: neither a large file nor the archive is ever whole in memory. */
import { createWriteStream } from "node:fs";
import { mkdir, rm, stat, statfs } from "node:fs/promises";
import { dirname, join } from "node:path";
import type { Readable } from "node:stream";
import { buffer } from "node:stream/consumers";
import { pipeline } from "node:stream/promises";
import { promisify } from "node:util";
import { type Entry, open as openZip, type ZipFile as ReadZip } from "yauzl";
import { ZipFile } from "yazl";
import { MANIFEST, parseStudioManifest, type StudioManifest } from "./manifest.ts";
import { StudioFilesRefused } from "./refused.ts";

/** Packs an exported folder into `target` (mode 0600), which must not exist. */
export async function zipExport(folder: string, { files, madeAt }: StudioManifest, target: string): Promise<void> {
  const zip = new ZipFile();
  const mtime = new Date(madeAt);
  const done = pipeline(
    zip.outputStream as Readable,
    createWriteStream(target, { flags: "wx", mode: 0o600, flush: true }),
  );
  for (const path of [...files.map((file) => file.path), MANIFEST])
    zip.addFile(join(folder, ...path.split("/")), path, { mtime, mode: 0o600 });
  zip.end();
  try {
    await done;
  } catch (error) {
    if (!(error instanceof Error && "code" in error && error.code === "EEXIST")) await rm(target, { force: true });
    throw error;
  }
}

/** The manifest of a large studio is a line of 150 bytes for each file. */
const MOST_MANIFEST_BYTES = 64 * 1024 * 1024;

/** An export packs to a sixth; what packs to less than a hundredth was made to fill a disk. */
const MOST_OF_A_PACKED_BYTE = 100;

/** Bytes that this account may still write there. */
async function freeBytes(folder: string): Promise<number> {
  const { bavail, bsize } = await statfs(folder);
  return bavail * bsize;
}

/**
 * Unpacks into `folder` what the manifest names, each file of the length it says, and nothing else. Before anything but the
 * manifest is unpacked, their sum is held against the archive's length and the free space. Throws StudioFilesRefused.
 */
export async function unzipExport(file: string, folder: string, free = freeBytes): Promise<void> {
  try {
    const zip = await open(file);
    try {
      await unpack(zip, { file, folder, packed: (await stat(file)).size, free: await free(folder) });
    } finally {
      zip.close();
    }
  } catch (error) {
    if (error instanceof StudioFilesRefused || isOfDisk(error)) throw error;
    throw new StudioFilesRefused(
      `${file} cannot be unpacked: it is damaged or not a zip file. Export the studio again.`,
    );
  }
}

/** Of the disk and not of the archive, whose own errors may have a code too. */
const isOfDisk = (error: unknown): boolean =>
  error instanceof Error &&
  "code" in error &&
  /^(ENOSPC|EDQUOT|EACCES|EPERM|EROFS|EIO|ENOENT)$/.test(String(error.code));

const open = (file: string) =>
  promisify<string, object, ReadZip>(openZip)(file, { lazyEntries: true, autoClose: false, strictFileNames: true });

interface Unpacking {
  readonly file: string;
  readonly folder: string;
  /** Bytes of the archive. */
  readonly packed: number;
  /** Bytes free where it is unpacked. */
  readonly free: number;
}

async function unpack(zip: ReadZip, unpacking: Unpacking): Promise<void> {
  const { file, folder } = unpacking;
  const all = await listed(zip);
  const entries = new Map(all.map((entry) => [entry.fileName, entry]));
  const head = entries.get(MANIFEST);
  if (!head || head.uncompressedSize > MOST_MANIFEST_BYTES)
    throw new StudioFilesRefused(`${file} is not an export of a studio: it has no ${MANIFEST}.`);
  const text = await buffer(await streamOf(zip, head));
  const manifest = parseStudioManifest(text.toString("utf8"), file);
  refuseUnnamed(all, manifest, file);
  refuseTooMuch(manifest, unpacking);
  await put(zip, head, folder);
  for (const { path, bytes } of manifest.files) {
    const entry = entries.get(path);
    if (!entry)
      throw new StudioFilesRefused(`${path} is missing from ${file}. Nothing was changed. Export the studio again.`);
    if (entry.uncompressedSize !== bytes)
      throw new StudioFilesRefused(`${path} in ${file} is damaged: it has another length. Nothing was changed.`);
    await put(zip, entry, folder).catch((error: unknown) => {
      if (isOfDisk(error)) throw error;
      throw new StudioFilesRefused(`${path} in ${file} is damaged. Nothing was changed. Export the studio again.`);
    });
  }
}

/** Folders hold nothing; whatever else is there that the manifest does not name, or twice, was put there. */
function refuseUnnamed(all: readonly Entry[], { files }: StudioManifest, file: string): void {
  const named = new Set([MANIFEST, ...files.map(({ path }) => path)]);
  const other = all.find(({ fileName }) => !fileName.endsWith("/") && !named.delete(fileName));
  if (other)
    throw new StudioFilesRefused(
      `${file} holds ${JSON.stringify(other.fileName)}, which its ${MANIFEST} does not name, or twice. Nothing was changed. Export the studio again.`,
    );
}

function refuseTooMuch({ files }: StudioManifest, { file, packed, free }: Unpacking): void {
  const sum = files.reduce((bytes, one) => bytes + one.bytes, 0);
  if (sum > packed * MOST_OF_A_PACKED_BYTE)
    throw new StudioFilesRefused(
      `${file} would unpack to ${inMb(sum)}, far more than an export of its size. Nothing was changed. If you trust it, unpack it yourself and name the folder.`,
    );
  // The files, and the database that is made of them.
  if (2 * sum > free)
    throw new StudioFilesRefused(
      `The import needs ${inMb(2 * sum)}, and ${inMb(free)} are free in the data folder. Nothing was changed. Free some space and try again.`,
    );
}

const inMb = (bytes: number): string => `${Math.ceil(bytes / 1e6)} MB`;

async function listed(zip: ReadZip): Promise<Entry[]> {
  const entries: Entry[] = [];
  await new Promise<void>((resolve, reject) => {
    zip.on("entry", (entry: Entry) => {
      entries.push(entry);
      zip.readEntry();
    });
    zip.once("end", () => resolve());
    zip.once("error", reject);
    zip.readEntry();
  });
  return entries;
}

const streamOf = (zip: ReadZip, entry: Entry): Promise<Readable> =>
  new Promise((resolve, reject) =>
    zip.openReadStream(entry, (error, stream) => (error ? reject(error) : resolve(stream))),
  );

/** The archive's reader ends with an error where the content is longer or shorter than its head says. */
async function put(zip: ReadZip, entry: Entry, folder: string): Promise<void> {
  const name = join(folder, ...entry.fileName.split("/"));
  await mkdir(dirname(name), { recursive: true, mode: 0o700 });
  await pipeline(await streamOf(zip, entry), createWriteStream(name, { flags: "wx", mode: 0o600 }));
}
