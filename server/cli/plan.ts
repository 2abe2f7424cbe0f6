/**
 * `npm run -s plan -- COMMAND FILE`: works on a plan file, without a server or a database. Answers are JSON on standard
 * output (WebVTT for `cues --vtt`). Exit 0; 1 when `check` finds a must, or `fit` or `order` find no solution; 2 with one
 * line on standard error for a bad file or a wrong call. Never a stack trace.
 */
import { stat } from "node:fs/promises";
import { COMMAND_NAMES, isCommand, optionsOf, runPlanCommand, wantedBeside } from "./commands.ts";
import { FileRefused, jsonAnswer, readBytesOf, runFileCommand, writeAnswer } from "./file-command.ts";
import { readPlanBytes } from "./read-plan.ts";

async function main(args: readonly string[]): Promise<number> {
  const [name, ...words] = args;
  const usage = `plan ${COMMAND_NAMES.map(withWanted).join("|")} FILE (- reads standard input)`;
  if (name === undefined) throw new FileRefused(`Name a command: ${usage}`);
  if (!isCommand(name)) throw new FileRefused(`There is no command "${name}". Use one of: ${COMMAND_NAMES.join(", ")}`);
  const { operands, options } = sortWords(name, words);
  const { file, asked } = await sortOperands(operands, wantedBeside(name) === undefined ? 1 : 2);
  if (file === undefined) throw new FileRefused(`Name one plan file: ${usage}`);
  const read = readPlanBytes(await readBytesOf(file, "plan file"));
  if (!read.ok) throw new FileRefused(`${file}: ${read.say}`);
  const answered = runPlanCommand(name, read.plan, asked, options);
  if (!answered.ok) throw new FileRefused(`${file}: ${answered.say}`);
  await writeAnswer("text" in answered ? answered.text : jsonAnswer(answered.json));
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
    throw new FileRefused(`"${name}" has no option "${strange}"${there}`);
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

await runFileCommand(main);
