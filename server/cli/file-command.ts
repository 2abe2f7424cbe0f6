/**
 * What the commands on files have in common: a file or standard input is read whole, the answer goes to standard output, and
 * whatever goes wrong is exit 2 with one line on standard error, never a stack trace.
 */
import { readFile, stat } from "node:fs/promises";
import { endQuietly } from "./end-quietly.ts";

/** The largest valid file takes a few megabytes. */
const MAX_BYTES = 64 * 1024 * 1024;

/** The command cannot be carried out; the message is one line. */
export class FileRefused extends Error {}

/** Runs `main` on the words of the command line and ends with the exit code it returns. */
export async function runFileCommand(main: (words: readonly string[]) => Promise<number>): Promise<void> {
  endQuietly();
  process.exitCode = await main(process.argv.slice(2)).catch(say);
}

/** The bytes of a file; "-" is standard input. `what`: "plan file". */
export const readBytesOf = (file: string, what: string): Promise<Uint8Array> =>
  file === "-" ? readStandardInput(what) : readPath(file, what);

async function readPath(file: string, what: string): Promise<Uint8Array> {
  try {
    if ((await stat(file)).size > MAX_BYTES) throw new FileRefused(tooLarge(file, what));
    return await readFile(file);
  } catch (error) {
    if (error instanceof FileRefused) throw error;
    throw new FileRefused(`${file}: ${readProblem(error, what)}`);
  }
}

const tooLarge = (file: string, what: string): string => `${file}: the ${what} should be smaller than 64 MB`;

function readProblem(error: unknown, what: string): string {
  const code = error instanceof Error && "code" in error ? error.code : undefined;
  if (code === "ENOENT" || code === "ENOTDIR") return "this file does not exist";
  if (code === "EISDIR") return `this is a folder, not a ${what}`;
  if (code === "EACCES" || code === "EPERM") return "this account may not read the file";
  return `the file cannot be read (${String(code)})`;
}

async function readStandardInput(what: string): Promise<Uint8Array> {
  const chunks: Buffer[] = [];
  let size = 0;
  for await (const chunk of process.stdin) {
    const bytes = Buffer.from(chunk);
    size += bytes.length;
    if (size > MAX_BYTES) throw new FileRefused(tooLarge("-", what));
    chunks.push(bytes);
  }
  return Buffer.concat(chunks);
}

/** Resolves when the text is written, or when the reader has closed the pipe, which is not an error. */
export function writeAnswer(text: string): Promise<void> {
  return new Promise((resolve) => {
    process.stdout.once("error", () => resolve());
    process.stdout.write(text, () => resolve());
  });
}

export const jsonAnswer = (json: unknown): string => `${JSON.stringify(json, null, 2)}\n`;

/** File names come from outside: control characters must not break the line or the terminal. */
const oneLine = (text: string): string => text.replace(/[\p{Cc}\p{Zl}\p{Zp}]/gu, "?");

function say(error: unknown): number {
  const line =
    error instanceof FileRefused
      ? error.message
      : `something went wrong, which is a bug in the program: ${String(error)}`;
  process.stderr.write(`${oneLine(line)}\n`);
  return 2;
}
