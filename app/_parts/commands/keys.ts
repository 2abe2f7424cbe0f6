/** From a key that was pressed to the command that it asks for. */
import { type CommandAt, type CommandTable, type KeyPlaceId, type Press, pressesOf } from "./command.ts";

/** What is read of a keyboard event, React's or the browser's. */
export interface Pressed {
  readonly key: string;
  readonly ctrlKey: boolean;
  readonly metaKey: boolean;
  readonly altKey: boolean;
  readonly shiftKey: boolean;
}
export interface KeyEvent extends Pressed {
  readonly target: EventTarget | null;
  preventDefault(): void;
  stopPropagation(): void;
}

interface Doing<Id extends string> {
  /** One for each command that has a key in the place. */
  readonly run: Readonly<Record<Id, () => void>>;
  /** Whether a fact that a command needs holds just now. */
  readonly holds?: (need: string) => boolean;
}

/**
 * Handles the keys of one place: put it on the place's element, or on the window for a whole page. A plain key is left to
 * whoever is typing, and a command that cannot be done just now leaves its key to the browser.
 */
export function keyHandler<T extends CommandTable, P extends KeyPlaceId<T>>(
  table: T,
  place: P,
  { run, holds = () => true }: Doing<CommandAt<T, P>>,
): (event: KeyEvent) => void {
  return (event) => {
    const id = commandOfKey(table, place, event);
    if (id === undefined || !(table.commands[id]?.needs ?? []).every(holds)) return;
    if (!table.places[place]?.whileTyping && !isHeld(event) && isTyping(event.target)) return;
    event.preventDefault();
    event.stopPropagation();
    run[id]();
  };
}

/** The command of a place that a key asks for. */
export function commandOfKey<T extends CommandTable, P extends KeyPlaceId<T>>(
  table: T,
  place: P,
  event: Pressed,
): CommandAt<T, P> | undefined {
  const found = Object.entries(table.commands).find(([, command]) =>
    pressesOf(command, place).some((press) => matches(press, event)),
  );
  return found?.[0] as CommandAt<T, P> | undefined; // it has a press in the place
}

const isHeld = (event: Pressed): boolean => event.ctrlKey || event.metaKey;

/** Shift counts only together with Ctrl or Cmd: by itself it is how many keyboards write "+" and "?". */
function matches(press: Press, event: Pressed): boolean {
  const mod = press.startsWith("Mod+");
  const alt = press.startsWith("Alt+");
  const shift = press.startsWith("Mod+Shift+");
  if (isHeld(event) !== mod || event.altKey !== alt || (mod && event.shiftKey !== shift)) return false;
  const key = press.replace(/^(?:Mod|Alt)\+/, "").replace(/^Shift\+/, "");
  // Where "+" needs Shift, the same key without it writes "=".
  const pressed = event.key === "=" ? "+" : event.key;
  return key.length === 1 ? pressed.toLowerCase() === key.toLowerCase() : pressed === key;
}

const NO_TEXT = new Set(["checkbox", "radio", "button", "range", "submit", "reset", "file", "color"]);

/** Whether a plain key writes something there. */
function isTyping(target: EventTarget | null): boolean {
  if (target === null || !(target instanceof HTMLElement)) return false;
  if (target instanceof HTMLInputElement) return !NO_TEXT.has(target.type);
  return target.isContentEditable || target instanceof HTMLTextAreaElement || target instanceof HTMLSelectElement;
}
