/**
 * `npm run -s month -- COMMAND FILE`: works on a month file, without a server or a database. Answers are JSON on standard
 * output (iCalendar for `ics`). Exit 0; 1 when `check` finds a must; 2 with one line on standard error for a bad file or a
 * wrong call. Never a stack trace.
 */
import { readMonthFile } from "#lib/month/file/read-month.ts";
import { FileRefused, jsonAnswer, readBytesOf, runFileCommand, writeAnswer } from "./file-command.ts";
import { MONTH_FILE_COMMANDS, type MonthOptions } from "./month-commands.ts";
import { utf8Text } from "./utf8.ts";

async function main([name, ...words]: readonly string[]): Promise<number> {
  const names = Object.keys(MONTH_FILE_COMMANDS);
  const usage = `month ${names.map(withOptions).join("|")} FILE (- reads standard input)`;
  if (name === undefined) throw new FileRefused(`Name a command: ${usage}`);
  const command = Object.hasOwn(MONTH_FILE_COMMANDS, name) ? MONTH_FILE_COMMANDS[name] : undefined;
  if (!command) throw new FileRefused(`There is no command "${name}". Use one of: ${names.join(", ")}`);
  const { files, options } = sortWords(name, words);
  const [file] = files;
  if (file === undefined || files.length > 1) throw new FileRefused(`Name one month file: ${usage}`);
  const text = utf8Text(await readBytesOf(file, "month file"));
  if (text === undefined) throw new FileRefused(`${file}: the month file should be UTF-8 text`);
  const read = readMonthFile(text);
  if (!read.ok) throw new FileRefused(`${file}: ${read.say}`);
  const answered = await command.answer(read.month, options);
  if (!answered.ok) throw new FileRefused(`${file}: ${answered.say}`);
  await writeAnswer("text" in answered ? answered.text : jsonAnswer(answered.json));
  return answered.exit;
}

const optionsOfMonth = (name: string): Readonly<Record<string, string>> => MONTH_FILE_COMMANDS[name]?.options ?? {};

const withOptions = (name: string): string => {
  const known = Object.entries(optionsOfMonth(name)).map(([option, value]) => `${option} ${value}`);
  return known.length > 0 ? `${name} [${known.join(" | ")}]` : name;
};

/** Every word that begins with "-", except "-" itself, is an option and takes the next word as its value. */
function sortWords(name: string, words: readonly string[]): { files: string[]; options: MonthOptions } {
  const known = optionsOfMonth(name);
  const [files, options] = [[] as string[], {} as Record<string, string>];
  for (let i = 0; i < words.length; i++) {
    const word = words[i] ?? "";
    if (word === "-" || !word.startsWith("-")) {
      files.push(word);
      continue;
    }
    if (!Object.hasOwn(known, word)) throw new FileRefused(strangeOption(name, word));
    const value = words[++i];
    if (value === undefined) throw new FileRefused(`Give ${word} its ${known[word]}`);
    options[word] = value;
  }
  return { files, options };
}

function strangeOption(name: string, word: string): string {
  const known = Object.keys(optionsOfMonth(name));
  return `"${name}" has no option "${word}"${known.length > 0 ? `. Its options are: ${known.join(", ")}` : ""}`;
}

await runFileCommand(main);
