/**
 * `npm run -s plan -- COMMAND FILE`: works on a plan file, without a server or a database. Answers are JSON on standard
 * output (WebVTT for `cues --vtt`). Exit 0; 1 when `check` finds a must, or `fit` or `order` find no solution; 2 with one
 * line on standard error for a bad file or a wrong call. Never a stack trace.
 */
import { readFile, stat } from "node:fs/promises";
import { COMMAND_NAMES, isCommand, optionsOf, runPlanCommand, wantedBeside } from "./commands.ts";
import { endQuietly } from "./end-quietly.ts";
import { readPlanBytes } from "./read-plan.ts";

/** The largest valid plan takes a few megabytes. */
const MAX_BYTES = 64 * 1024 * 1024;

/** The command cannot be carried out; the message is one line. */
class Refusal extends Error {}

async function main(args: readonly string[]): Promise<number> {
  const [name, ...words] = args;
  const usage = `plan ${COMMAND_NAMES.map(withWanted).join("|")} FILE (- reads standard input)`;
  if (name === undefined) throw new Refusal(`Name a command: ${usage}`);
  if (!isCommand(name)) throw new Refusal(`There is no command "${name}". Use one of: ${COMMAND_NAMES.join(", ")}`);
  const { operands, options } = sortWords(name, words);
  const { file, asked } = await sortOperands(operands, wantedBeside(name) === undefined ? 1 : 2);
  if (file === undefined) throw new Refusal(`Name one plan file: ${usage}`);
  const read = readPlanBytes(file === "-" ? await readStandardInput() : await readPath(file));
  if (!read.ok) throw new Refusal(`${file}: ${read.say}`);
  const answered = runPlanCommand(name, read.plan, asked, options);
  if (!answered.ok) throw new Refusal(`${file}: ${answered.say}`);
  await write("text" in answered ? answered.text : `${JSON.stringify(answered.json, null, 2)}\n`);
  return answered.exit;
}

const withWanted = (name: string): string =>
  [name, ...optionsOf(name).map((option) => `[${option}]`), wantedBeside(name) ?? ""].join(" ").trimEnd();

/** Options may stand anywhere after the command: every word that begins with "-", except "-" itself. */
function sortWords(name: string, words: readonly string[]): { operands: string[]; options: string[] } {
  const isOption = (word: string): boolean => word.length > 1 && word.startsWith("-");
  const options = words.filter(isOption);
  const known = optionsOf(name);
  const strange = options.find((option) => !known.includes(option));
  if (strange !== undefined) {
    const there = known.length > 0 ? `. Its options are: ${known.join(", ")}` : "";
    throw new Refusal(`"${name}" has no option "${strange}"${there}`);
  }
  return { operands: words.filter((word) => !isOption(word)), options };
}

/** The file is the last word, or the first of two when only that names a file. No file for no words or too many. */
async function sortOperands(
  operands: readonly string[],
  most: number,
): Promise<{ file?: string | undefined; asked?: string | undefined }> {
  const [first, second] = operands;
  if (operands.length > most) return {};
  if (second === undefined) return { file: first };
  const swapped = first !== undefined && (await isFile(first)) && !(await isFile(second));
  return swapped ? { file: first, asked: second } : { file: second, asked: first };
}

async function isFile(name: string): Promise<boolean> {
  if (name === "-") return true;
  return stat(name).then(
    (found) => !found.isDirectory(),
    () => false,
  );
}

async function readPath(file: string): Promise<Uint8Array> {
  try {
    if ((await stat(file)).size > MAX_BYTES) throw new Refusal(`${file}: the plan file should be smaller than 64 MB`);
    return await readFile(file);
  } catch (error) {
    if (error instanceof Refusal) throw error;
    throw new Refusal(`${file}: ${readProblem(error)}`);
  }
}

function readProblem(error: unknown): string {
  const code = error instanceof Error && "code" in error ? error.code : undefined;
  if (code === "ENOENT" || code === "ENOTDIR") return "this file does not exist";
  if (code === "EISDIR") return "this is a folder, not a plan file";
  if (code === "EACCES" || code === "EPERM") return "this account may not read the file";
  return `the file cannot be read (${String(code)})`;
}

async function readStandardInput(): Promise<Uint8Array> {
  const chunks: Buffer[] = [];
  let size = 0;
  for await (const chunk of process.stdin) {
    const bytes = Buffer.from(chunk);
    size += bytes.length;
    if (size > MAX_BYTES) throw new Refusal("-: the plan file should be smaller than 64 MB");
    chunks.push(bytes);
  }
  return Buffer.concat(chunks);
}

/** Resolves when the text is written, or when the reader has closed the pipe, which is not an error. */
function write(text: string): Promise<void> {
  return new Promise((resolve) => {
    process.stdout.once("error", () => resolve());
    process.stdout.write(text, () => resolve());
  });
}

/** File names come from outside: control characters must not break the line or the terminal. */
const oneLine = (text: string): string => text.replace(/[\p{Cc}\p{Zl}\p{Zp}]/gu, "?");

function say(error: unknown): number {
  const line =
    error instanceof Refusal ? error.message : `something went wrong, which is a bug in the program: ${String(error)}`;
  process.stderr.write(`${oneLine(line)}\n`);
  return 2;
}

endQuietly();
process.exitCode = await main(process.argv.slice(2)).catch(say);
