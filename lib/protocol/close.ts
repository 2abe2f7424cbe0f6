/**
 * Why the server ends a socket. 4400-4499 are final: the page does not reconnect by itself but says what happened and
 * what to do. 4500-4599 mean "try again". Every text is shown to a person.
 */
export const CLOSE = {
  badMessage: {
    code: 4400,
    text: "The server could not read what this page sent. Reload the page; your words are kept on this device.",
  },
  notSignedIn: {
    code: 4401,
    text: "Your session has ended. Sign in again: what you typed is kept on this device and will be saved then.",
  },
  otherPerson: {
    code: 4402,
    text: "Somebody else has signed in on this device. Your unsaved words are kept here: sign in as yourself again to save them.",
  },
  noRight: {
    code: 4403,
    text: "You no longer have access to this. What you typed is kept on this device. Ask its author or a lead to share it with you.",
  },
  unknownDocument: {
    code: 4404,
    text: "This document does not exist, or you may not see it. What you typed is kept on this device. Go back to your desk, or ask its author to share it with you.",
  },
  tooSlowToSignIn: { code: 4408, text: "The server took too long to check who you are. Reload the page." },
  erasing: {
    code: 4406,
    text: "This page tried to erase part of this document for good, which is not allowed: what is taken out can always be put back. None of that change was saved. Copy what you typed last, then load the document again.",
  },
  newerDocument: {
    code: 4409,
    text: "This document was written by a newer version of the program. Nothing was changed. Ask whoever runs the server to update it, then open the document again.",
  },
  damaged: {
    code: 4411,
    text: "The server's copy of this document is damaged, so it was not opened and nothing was changed. Ask whoever runs the server to look at its log; your words are kept on this device.",
  },
  tooLarge: {
    code: 4413,
    text: "That change is too large to save in one go. It is kept on this device but not in the plan: undo it, or add it in smaller parts.",
  },
  tooHeavy: {
    code: 4414,
    text: "That change is too much work for the server in one go. None of it was saved; it is kept on this device. Undo it, or make it in smaller parts.",
  },
  full: {
    code: 4415,
    text: "This document has reached its size limit: what you added last was not saved, but is kept on this device. Undo it or shorten something, then try again. If a plan stays full, it has been changed too many times: duplicate it on your desk; the copy starts afresh.",
  },
  oldPage: { code: 4426, text: "The program has been updated. Reload the page; your words are kept on this device." },
  tooMuch: { code: 4429, text: "This page sent too much before the server had checked who you are. Reload the page." },
  turnedAway: { code: 4430, text: "This page kept sending changes that are not allowed here. Reload the page." },
  tooManyPages: {
    code: 4431,
    text: "You have this studio open in more pages than the server allows for one person. Close some of them, then reload this one.",
  },
  generationChanged: {
    code: 4410,
    text: "The server's copy of this document was replaced. Reload the page; the copy on this device is set aside.",
  },
  roomReloaded: { code: 4500, text: "The server is reading this document from disk again. Reconnecting." },
  rightsChanged: { code: 4501, text: "Your rights have changed. Reconnecting." },
  storageFailing: {
    code: 4503,
    text: "The server cannot save just now. Your words are kept on this device; trying again.",
  },
  storageDamaged: {
    code: 4508,
    text: "The server's database is damaged, so nothing is saved until a backup is restored. Your words are kept on this device; trying again.",
  },
  tooSlow: { code: 4504, text: "This connection could not keep up. Reconnecting." },
  idTaken: { code: 4506, text: "Another page has the same id, so this page is taking a new one. Reconnecting." },
  othersFirst: {
    code: 4507,
    text: "This page holds a colleague's words that the server has not yet received from them. Yours are kept on this device and are saved once your colleague has this open again; trying again.",
  },
  stopping: {
    code: 4505,
    text: "The server is stopping for a moment. Your words are kept on this device; this page comes back by itself.",
  },
} as const;

export type CloseName = keyof typeof CLOSE;

/** The sentence for a close code, or undefined for an ordinary lost connection. */
export function closeText(code: number): string | undefined {
  return Object.values(CLOSE).find((c) => c.code === code)?.text;
}

export const isFinalClose = (code: number): boolean => code >= 4400 && code < 4500;
