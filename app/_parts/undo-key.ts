/** Which way the keys for undo and redo go; null for other keys. */

interface Keys {
  readonly key: string;
  readonly ctrlKey: boolean;
  readonly metaKey: boolean;
  readonly altKey: boolean;
  readonly shiftKey: boolean;
}

export function undoKey({ key, ctrlKey, metaKey, altKey, shiftKey }: Keys): "undo" | "redo" | null {
  const letter = key.toLowerCase();
  if (!(ctrlKey || metaKey) || altKey || (letter !== "z" && letter !== "y")) return null;
  return letter === "y" || shiftKey ? "redo" : "undo";
}
