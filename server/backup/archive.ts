/**
 * A backup file: a tar archive of `manifest.json`, `springline.sqlite` and `secret`. A tar archive can be opened without
 * this program; the manifest holds the length and SHA-256 of each file, since tar does not check their content.
 */
import { createHash } from "node:crypto";
import { createReadStream, createWriteStream } from "node:fs";
import { open, readFile, stat, writeFile } from "node:fs/promises";
import { join } from "node:path";
import { Readable } from "node:stream";
import { pipeline } from "node:stream/promises";
import { extract, pack } from "tar-stream";
import * as z from "zod";
import { BackupRefused } from "./backup-refused.ts";

export const DATABASE_ENTRY = "springline.sqlite";
export const SECRET_ENTRY = "secret";
const MANIFEST_ENTRY = "manifest.json";
const FORMAT = 1;
/** Bytes; the manifest and the secret are smaller than this. */
const SMALL = 64 * 1024;
/** Bytes of the head of an entry (POSIX ustar); its name is at 0 and its size, in octal digits, at 124. */
const TAR_BLOCK = 512;

const factsSchema = z.object({
  rows: z.record(z.string(), z.number().int()),
  head: z.object({ seq: z.number().int(), hash: z.string() }),
});
const contents = z.object({ bytes: z.number().int(), sha256: z.string().length(64) });
const manifestSchema = z.object({
  springlineBackup: z.number().int(),
  /** The program's version. */
  program: z.string(),
  madeAt: z.iso.datetime(),
  files: z.object({ [DATABASE_ENTRY]: contents, [SECRET_ENTRY]: contents }),
  /** What the database held; left out by older programs. */
  holds: factsSchema.optional(),
  /** The installation whose schedule made it; left out where a person did. */
  scheduledBy: z.string().optional(),
});
export type Manifest = z.infer<typeof manifestSchema>;

export interface MadeAs extends Pick<Manifest, "program" | "holds" | "scheduledBy"> {
  readonly at: Date;
}

/** Packs the database and the secret in `folder` into `target` (mode 0600), which must not exist. */
export async function writeArchive(folder: string, target: string, { at, ...made }: MadeAs): Promise<void> {
  const files = {
    [DATABASE_ENTRY]: await contentsOf(join(folder, DATABASE_ENTRY)),
    [SECRET_ENTRY]: await contentsOf(join(folder, SECRET_ENTRY)),
  };
  const manifest: Manifest = { springlineBackup: FORMAT, madeAt: at.toISOString(), ...made, files };
  const archive = pack();
  const written = pipeline(archive, createWriteStream(target, { flags: "wx", mode: 0o600, flush: true }));
  const add = async () => {
    const facts = { mode: 0o600, mtime: at };
    archive.entry({ name: MANIFEST_ENTRY, ...facts }, `${JSON.stringify(manifest, null, 2)}\n`);
    for (const name of [DATABASE_ENTRY, SECRET_ENTRY] as const) {
      const entry = archive.entry({ name, size: files[name].bytes, ...facts });
      await pipeline(createReadStream(join(folder, name)), entry);
    }
    archive.finalize();
  };
  await Promise.all([written, add()]);
}

/** Unpacks into `folder`, which is empty, and compares every byte with the manifest. Throws BackupRefused. */
export async function readArchive(file: string, folder: string): Promise<Manifest> {
  const unpacked = extract();
  const reading = pipeline(createReadStream(file), unpacked);
  // Awaited at the end; the error of a broken archive comes out of the loop first.
  reading.catch(() => undefined);
  try {
    for await (const entry of unpacked) await keep(entry, entry.header, folder);
    await reading;
  } catch (error) {
    if (error instanceof BackupRefused) throw error;
    throw new BackupRefused(
      `${file} cannot be unpacked: it is damaged or not a Springline backup. Use another backup.`,
    );
  }
  return checked(file, folder);
}

async function keep(
  entry: AsyncIterable<unknown>,
  header: { name: string; size?: number | undefined; type?: string | null | undefined },
  folder: string,
): Promise<void> {
  const known = [MANIFEST_ENTRY, DATABASE_ENTRY, SECRET_ENTRY].includes(header.name) && header.type === "file";
  const tooLarge = header.name !== DATABASE_ENTRY && (header.size ?? 0) > SMALL;
  if (!known || tooLarge) throw new BackupRefused("This archive is not a Springline backup: it contains other files.");
  await pipeline(
    Readable.from(entry),
    createWriteStream(join(folder, header.name), { flags: "wx", mode: 0o600, flush: true }),
  );
}

async function checked(file: string, folder: string): Promise<Manifest> {
  const text = await readFile(join(folder, MANIFEST_ENTRY), "utf8").catch(() => "");
  const manifest = parseManifest(file, text);
  for (const name of [DATABASE_ENTRY, SECRET_ENTRY] as const) {
    const there = await contentsOf(join(folder, name)).catch(() => undefined);
    const meant = manifest.files[name];
    if (there?.sha256 !== meant.sha256 || there.bytes !== meant.bytes)
      throw new BackupRefused(`${file} is damaged: its ${name} has changed since the backup. Use another backup.`);
  }
  return manifest;
}

function parseManifest(file: string, text: string): Manifest {
  let value: unknown;
  try {
    value = JSON.parse(text);
  } catch {
    throw new BackupRefused(
      `${file} is not a Springline backup, or it is incomplete: it has no readable manifest. Use another backup.`,
    );
  }
  const format = z.object({ springlineBackup: z.number() }).safeParse(value);
  if (format.success && format.data.springlineBackup > FORMAT)
    throw new BackupRefused(`${file} was made by a newer version of Springline. Update Springline first.`);
  const parsed = manifestSchema.safeParse(value);
  if (!parsed.success) throw new BackupRefused(`${file} is not a Springline backup: its manifest is not valid.`);
  return parsed.data;
}

/** The manifest at the head of an archive, without checking what follows it; undefined for any other file. */
export async function readManifest(file: string): Promise<Manifest | undefined> {
  const handle = await open(file, "r");
  try {
    const { buffer, bytesRead } = await handle.read(Buffer.alloc(TAR_BLOCK + SMALL), 0, TAR_BLOCK + SMALL, 0);
    const head = buffer.subarray(0, bytesRead);
    if (head.toString("latin1", 0, MANIFEST_ENTRY.length + 1) !== `${MANIFEST_ENTRY}\0`) return undefined;
    const size = Number.parseInt(head.toString("latin1", 124, 136), 8);
    const text = head.toString("utf8", TAR_BLOCK, TAR_BLOCK + (Number.isNaN(size) ? 0 : size));
    return manifestSchema.safeParse(JSON.parse(text)).data;
  } catch {
    return undefined;
  } finally {
    await handle.close();
  }
}

async function contentsOf(file: string): Promise<{ bytes: number; sha256: string }> {
  const hash = createHash("sha256");
  await pipeline(createReadStream(file), hash);
  return { bytes: (await stat(file)).size, sha256: hash.digest("hex") };
}

export const writeSecret = (folder: string, secret: string): Promise<void> =>
  writeFile(join(folder, SECRET_ENTRY), secret, { mode: 0o600, flag: "wx" });
