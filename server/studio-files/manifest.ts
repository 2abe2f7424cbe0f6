/** The list of an export's files, each with its length and SHA-256, and what an import has to know before it begins. */
import * as z from "zod";
import { StudioFilesRefused } from "./refused.ts";

export const MANIFEST = "manifest.json";
export const FORMAT_NAME = "springline.studio";
/** Raised when an older program could not import it. */
export const FORMAT_VERSION = 1;

const fileSchema = z.strictObject({
  path: z.string().min(1).max(400),
  bytes: z.number().int().nonnegative(),
  sha256: z.string().regex(/^[0-9a-f]{64}$/),
});
const manifestSchema = z.strictObject({
  format: z.literal(FORMAT_NAME),
  version: z.number().int(),
  /** The program's version. */
  program: z.string(),
  /** The moment that everything here is of. */
  madeAt: z.iso.datetime(),
  studio: z.string(),
  /** The address that links in it begin with. */
  address: z.string(),
  /** Rows by table. */
  tables: z.record(z.string(), z.number().int().nonnegative()),
  /** The last number that each counting table has given. */
  counters: z.record(z.string(), z.number().int().nonnegative()),
  /** The end of the record. */
  record: z.strictObject({ seq: z.number().int(), hash: z.string() }),
  /** What did not hold in the studio itself when it was exported, in sentences. */
  faults: z.array(z.string()),
  /** Open files that could not be written. Their rows are in `tables` all the same. */
  leftOut: z.array(z.strictObject({ path: z.string(), why: z.string() })),
  files: z.array(fileSchema),
});
export type StudioManifest = z.infer<typeof manifestSchema>;
export type ManifestFile = z.infer<typeof fileSchema>;

/** `where`: how a refusal names the export. Throws StudioFilesRefused. */
export function parseStudioManifest(text: string, where: string): StudioManifest {
  const value = parsed(text);
  const format = z.object({ format: z.literal(FORMAT_NAME), version: z.number() }).safeParse(value).data;
  if (!format) throw new StudioFilesRefused(`${where} is not an export of a studio: its ${MANIFEST} is not readable.`);
  if (format.version > FORMAT_VERSION)
    throw new StudioFilesRefused(`${where} was made by a newer version of Springline. Update Springline first.`);
  const manifest = manifestSchema.safeParse(value);
  if (!manifest.success) {
    const at = manifest.error.issues[0]?.path.join(".") ?? "";
    throw new StudioFilesRefused(
      `${where} is damaged: its ${MANIFEST} is not valid at "${at}". Export the studio again.`,
    );
  }
  const wrong = manifest.data.files.find(({ path }) => !isPlainPath(path));
  if (wrong)
    throw new StudioFilesRefused(
      `${where} is damaged: its ${MANIFEST} names a file outside of it. Export the studio again.`,
    );
  return manifest.data;
}

function parsed(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return undefined;
  }
}

/** Folders and names of letters, digits, dots, hyphens and underscores; nothing that leads elsewhere. */
const isPlainPath = (path: string): boolean =>
  path.split("/").every((part) => /^[A-Za-z0-9._-]+$/.test(part) && !/^\.+$/.test(part)) && path !== MANIFEST;

export const manifestText = (manifest: StudioManifest): string => `${JSON.stringify(manifest, null, 2)}\n`;

/** The faults as they are shown: whoever made the file may have put controls of a terminal into them. */
export const shownFaults = ({ faults }: StudioManifest): string[] =>
  faults.map((fault) => fault.replace(/\p{Cc}+/gu, " "));
