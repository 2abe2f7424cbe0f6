/**
 * A command in this process, with its own words, pipes and exit code: only its first file is loaded anew, so that one
 * call takes milliseconds. What the process itself does is for a test that starts one.
 */
import { join } from "node:path";
import { PassThrough, Readable } from "node:stream";
import { vi } from "vitest";

export interface CommandEnd {
  readonly code: number | string | null | undefined;
  readonly out: string;
  readonly err: string;
}

const COMMANDS = join(import.meta.dirname, "../../server/cli");
let calls = 0;

/** Runs `server/cli/NAME.ts`. One call at a time: it takes the place of the process's own arguments and streams. */
export async function commandHere(
  name: "plan" | "month" | "studio",
  words: readonly string[],
  input: string | Uint8Array = "",
): Promise<CommandEnd> {
  const [out, err] = [kept(), kept()];
  const stands = [
    vi.spyOn(process, "stdin", "get").mockReturnValue(Readable.from([Buffer.from(input)]) as typeof process.stdin),
    vi.spyOn(process, "stdout", "get").mockReturnValue(out.stream as unknown as typeof process.stdout),
    vi.spyOn(process, "stderr", "get").mockReturnValue(err.stream as unknown as typeof process.stderr),
  ];
  const [argv, exitCode, umask] = [process.argv, process.exitCode, process.umask()];
  process.argv = [process.execPath, name, ...words];
  process.exitCode = undefined;
  try {
    const file = `${COMMANDS}/${name}.ts?call=${++calls}`;
    await import(/* @vite-ignore */ file);
    return { code: process.exitCode, out: out.text(), err: err.text() };
  } finally {
    process.argv = argv;
    process.exitCode = exitCode;
    process.umask(umask);
    for (const stand of stands) stand.mockRestore();
  }
}

function kept() {
  const stream = new PassThrough();
  const parts: Buffer[] = [];
  stream.on("data", (part: Buffer) => parts.push(part));
  return { stream, text: () => Buffer.concat(parts).toString() };
}
