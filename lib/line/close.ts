/** Why the server closes a screen's socket. 4400-4499 are final, 4500-4599 mean "try again". People see every text. */
export const LINE_CLOSE = {
  badMessage: { code: 4400, text: "The server could not read what this screen sent. Reload the page." },
  notPaired: {
    code: 4401,
    text: "This device is no longer paired with the studio. Classes kept on it still run. To connect it again, pair it with a new code.",
  },
  replaced: {
    code: 4402,
    text: "The floor is open in another tab of this device, and that tab is connected instead. Reload this page to connect here.",
  },
  tooSlow: { code: 4408, text: "This screen took too long to identify itself. Reload the page." },
  tooLarge: { code: 4413, text: "This screen sent more at once than the server accepts. Reload the page." },
  oldPage: { code: 4426, text: "The program has been updated. Reload the page." },
  tooMuch: { code: 4429, text: "This screen sent too many messages. Reload the page." },
  full: {
    code: 4430,
    text: "As many screens are connected in this room as the server allows. Close the floor on one of them and reload this page.",
  },
  cannotKeepUp: { code: 4504, text: "This connection is too slow to keep up. Trying again." },
  stopping: { code: 4505, text: "The server is stopping for a moment. This screen goes on and comes back by itself." },
} as const;

export type LineCloseName = keyof typeof LINE_CLOSE;

/** The sentence for a final close; null when trying again makes sense, as after any lost connection. */
export function finalCloseText(code: number): string | null {
  // 1009: the socket layer itself found a frame too large.
  if (code === 1009) return LINE_CLOSE.tooLarge.text;
  if (code < 4400 || code >= 4500) return null;
  return Object.values(LINE_CLOSE).find((close) => close.code === code)?.text ?? LINE_CLOSE.badMessage.text;
}
