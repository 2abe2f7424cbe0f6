/**
 * Commands: what a person can do in one part of the product, as one table. Keys, the list of keys, buttons and the acts
 * offered beside a chosen item are all made from it, so that none of them can say something else than another.
 */

/**
 * A key as `KeyboardEvent.key` names it, with "Alt+", "Mod+" or "Mod+Shift+" before it where that is held. Mod is Ctrl or,
 * on a Mac, Cmd. Capital and small letters are one key.
 */
export type Press = string;

export interface Command<Need extends string = string> {
  /** By place: one press, or several that do the same. */
  readonly keys?: Readonly<Record<string, Press | readonly Press[]>>;
  /** What the list of keys says. Commands of one place with the same sentence share a line of it. */
  readonly help?: string;
  /** Words on its button. */
  readonly words?: string;
  /** Facts without which it can do nothing: its key is then left to the browser and its button is not shown. */
  readonly needs?: readonly Need[];
}

/** A key as it is printed, and what it does. */
type KeyLine = readonly [keys: string, help: string];

/** Where keys are pressed: the whole page, or one element of it. */
interface KeyPlace {
  /** Over its lines in the list of keys. */
  readonly title: string;
  /** Its keys count while somebody types, too. */
  readonly whileTyping?: true;
  /** Keys of the browser or the editor there, which no command handles. */
  readonly others?: readonly KeyLine[];
  /** Facts without which nothing can be done there: its part of the list of keys is then left out. */
  readonly needs?: readonly string[];
}

export interface CommandTable<Need extends string = string> {
  /** In the order of the list of keys. */
  readonly places: Readonly<Record<string, KeyPlace>>;
  readonly commands: Readonly<Record<string, Command<Need>>>;
}

export type CommandId<T extends CommandTable> = keyof T["commands"] & string;
export type KeyPlaceId<T extends CommandTable> = keyof T["places"] & string;

/** Ids of the commands that have a key in a place. */
export type CommandAt<T extends CommandTable, P extends KeyPlaceId<T>> = {
  [Id in CommandId<T>]: T["commands"][Id] extends { readonly keys: { readonly [K in P]: unknown } } ? Id : never;
}[CommandId<T>];

/** The presses of a command in a place. */
export function pressesOf(command: Command, place: string): readonly Press[] {
  const presses = command.keys?.[place] ?? [];
  return typeof presses === "string" ? [presses] : presses;
}

/** One part of the list of keys. */
export interface KeyPart {
  readonly title: string;
  readonly keys: readonly KeyLine[];
}

/**
 * The list of keys a table makes: one part a place, one line a sentence. Places without keys are left out, and what needs a fact that
 * can never hold for the person who reads it.
 */
export function keyParts(table: CommandTable, canHold: (need: string) => boolean = () => true): readonly KeyPart[] {
  return Object.entries(table.places)
    .filter(([, { needs = [] }]) => needs.every(canHold))
    .map(([place, { title, others = [] }]) => ({ title, keys: [...keyLines(table, place, canHold), ...others] }))
    .filter(({ keys }) => keys.length > 0);
}

function keyLines({ commands }: CommandTable, place: string, canHold: (need: string) => boolean): KeyLine[] {
  const byHelp = new Map<string, Press[]>();
  for (const command of Object.values(commands)) {
    if (!(command.needs ?? []).every(canHold)) continue;
    const presses = pressesOf(command, place);
    if (presses.length === 0) continue;
    const { help = "" } = command;
    byHelp.set(help, [...(byHelp.get(help) ?? []), ...presses]);
  }
  return [...byHelp].map(([help, presses]) => [printedPresses(presses), help]);
}

const PRINTED: Readonly<Record<string, string>> = {
  ArrowUp: "↑",
  ArrowDown: "↓",
  ArrowLeft: "←",
  ArrowRight: "→",
  PageUp: "Page up",
  PageDown: "Page down",
  "-": "−",
  " ": "Space",
};
const MODIFIERS = /^((?:Mod|Alt)\+)?(Shift\+)?(.+)$/;

interface PressParts {
  /** "Mod+", "Alt+" or nothing. */
  readonly held: string;
  readonly shift: string;
  readonly key: string;
}
function partsOf(press: Press): PressParts {
  const [, held = "", shift = "", key = ""] = MODIFIERS.exec(press) ?? [];
  return { held, shift, key };
}

/** "Alt + ↑ ↓", "Home, End", "Ctrl or Cmd + Shift + Z, Ctrl or Cmd + Y". What is held for neighbours is named once. */
export function printedPresses(presses: readonly Press[]): string {
  const all = presses.map(partsOf);
  return all.reduce((text, { held, shift, key }, i) => {
    const before = all[i - 1];
    const isSame = before?.held === held && before.shift === shift;
    const join = before === undefined ? "" : isSame && isArrow(key) && isArrow(before.key) ? " " : ", ";
    const modifiers = `${held.replace("Mod", "Ctrl or Cmd")}${shift}`.replaceAll("+", " + ");
    return `${text}${join}${isSame ? "" : modifiers}${PRINTED[key] ?? (key.length === 1 ? key.toUpperCase() : key)}`;
  }, "");
}

const isArrow = (key: string): boolean => key.startsWith("Arrow");

/** For `aria-keyshortcuts`: "Control+D Meta+D". Undefined when the command has no key in the place. */
export function ariaShortcuts(command: Command, place: string): string | undefined {
  const [press] = pressesOf(command, place);
  if (press === undefined) return undefined;
  const { held, shift, key } = partsOf(press);
  const named = key === "+" ? "Plus" : key === " " ? "Space" : key.length === 1 ? key.toUpperCase() : key;
  const ways = held === "Mod+" ? ["Control+", "Meta+"] : [held];
  return ways.map((way) => `${way}${shift}${named}`).join(" ");
}
