/** The pages of the program itself and the parts of the long ones, by what a person may open. Pure. */
import { can, type Person, type StudioAction } from "#lib/policy/can.ts";
import { DEVICES_PLACE } from "#lib/protocol/places.ts";
import type { KnownPage } from "./known-pages.ts";

export type MenuSection = "desk" | "programme" | "library" | "rules" | "people" | "record" | "studio";

export interface MenuPlace {
  readonly section: MenuSection;
  readonly href: string;
  readonly name: string;
}

/** The menu of this person's pages; no place is in it that would refuse them. */
export function menuPlaces(person: Person): MenuPlace[] {
  const may = (...rights: readonly StudioAction[]) => rights.some((right) => can(person, right));
  const places: (MenuPlace | false)[] = [
    { section: "desk", href: "/desk", name: "Desk" },
    may("programme.read") && { section: "programme", href: "/programme", name: "Programme" },
    may("library.read") && { section: "library", href: "/library", name: "Library" },
    may("library.read") && { section: "rules", href: "/rules", name: "Rules" },
    may("people.manage", "rubric.write") && { section: "people", href: "/people", name: "People" },
    may("record.read") && { section: "record", href: "/record", name: "Record" },
    may("rooms.manage") && { section: "studio", href: "/studio", name: DEVICES_PLACE.under },
  ];
  return places.filter((place) => place !== false);
}

/** What is in them, in a line, and words that people type for them. */
const MENU_TEXTS: Readonly<Record<MenuSection, readonly [text: string, more: string]>> = {
  desk: ["Your plans, what waits for you, the next classes.", "home start new plan deleted archived"],
  programme: ["The month: its classes, work and rest of each muscle group.", "month calendar timetable schedule"],
  library: ["The studio’s moves.", "exercises"],
  rules: ["What plans and months are checked for, and your studio’s limits.", "findings standards"],
  people: ["Who is in the studio, their roles, invitations.", "members team invite roles"],
  record: ["What people with rights did, row by row.", "log history audit"],
  studio: ["Rooms, devices, e-mail, backups and everything else that managers set.", "manage set up"],
};

const SETTINGS = "Settings";

/** By the page and the id of the part on it: `tests/browser/find.spec.ts` holds them against the headings. */
const OWN_PARTS: readonly KnownPage[] = [
  { href: "/settings#name", title: "Name", more: "display call" },
  { href: "/settings#email", title: "Email", more: "address e-mail sign in" },
  { href: "/settings#password", title: "Password", more: "change sign in" },
  { href: "/settings#formats", title: "Dates and units", more: "language clock week newtons pounds inches force" },
  { href: "/settings#told", title: "What you are told, and when", more: "notices notifications mail digest" },
];

const STUDIO_PARTS: readonly KnownPage[] = [
  { href: "/studio#name", title: "Name and town" },
  {
    href: "/studio#formats",
    title: "Time zone, week, dates and units",
    more: "timezone clock language newtons pounds",
  },
  { href: "/studio#rooms", title: "Rooms and springs", more: "machines equipment measure add room" },
  { href: DEVICES_PLACE.href, title: DEVICES_PLACE.name, more: "pair pairing code tablet floor screen" },
  { href: "/studio#month", title: "Months", more: "machines kind" },
  { href: "/studio#policy", title: "Sign-off", more: "policy sole author sign" },
  { href: "/studio#mail", title: "E-mail", more: "email smtp server queue" },
  { href: "/studio#backups", title: "Backups", more: "copies restore" },
  { href: "/studio#export", title: "Export", more: "download zip everything move away" },
  { href: "/studio#standards", title: "Studio standards", more: "rules limits levels" },
  { href: "/studio#first-steps", title: "First steps", more: "begin set up" },
];

/** `month`: 'YYYY-MM', the one that it is in the studio. */
export function programPages(person: Person, month: string): KnownPage[] {
  const menu = menuPlaces(person).map(({ section, href, name }): KnownPage => {
    const [text, more] = MENU_TEXTS[section];
    return { href, title: name, text, more };
  });
  return [...menu, ...ownPages(person), ...studioPages(person), ...workPages(person, month)];
}

const within = (place: string, parts: readonly KnownPage[]): KnownPage[] =>
  parts.map((part) => ({ ...part, beside: place, more: `${place} ${part.more ?? ""}` }));

function ownPages(person: Person): KnownPage[] {
  return [
    {
      ...{ href: "/settings", title: SETTINGS, text: "Your name, address, password, dates and units." },
      more: "account profile preferences",
    },
    { href: "/notices", title: "Notices", text: "What you were told.", more: "notifications news" },
    ...within("Notices", [{ href: "/notices#choices", title: "How you are told", more: "digest mail time zone" }]),
    { href: `/people/${person.id}`, title: "Your marks and classes", more: "progress over time" },
    {
      href: "/help",
      title: "Help",
      text: "How things are done, the keys, the words, the rules.",
      more: "manual guide",
    },
    ...within(SETTINGS, OWN_PARTS),
  ];
}

function studioPages(person: Person): KnownPage[] {
  const { under } = DEVICES_PLACE;
  const health = { href: "/studio/health", title: "Health", text: "How the server is.", more: "status disk errors" };
  return [
    ...(can(person, "health.read") ? within(under, [health]) : []),
    ...(can(person, "rooms.manage") ? within(under, STUDIO_PARTS) : []),
  ];
}

function workPages(person: Person, month: string): KnownPage[] {
  const may = (...rights: readonly StudioAction[]) => rights.some((right) => can(person, right));
  const pages: (KnownPage | false)[] = [
    may("feed.own", "feeds.manage") && {
      ...{ href: "/programme/feeds", title: "Calendar addresses", more: "feed subscribe ics phone" },
    },
    may("look-back.read") && {
      ...{ href: `/programme/${month}/looking-back`, title: "Looking back" },
      text: "What was taught of this month.",
    },
    may("library.write") && { href: "/library/new", title: "New move", beside: "Library", more: "add" },
    may("library.write") && {
      ...{ href: "/library/bring", title: "Bring moves from a plan file", beside: "Library", more: "import" },
    },
    may("remarks.read") && { href: "/remarks", title: "Remarks of the studio", more: "stock comments" },
    may("remarks.read", "rubric.write") && { href: "/rubric", title: "Rubric", more: "marks criteria" },
  ];
  return pages.filter((page) => page !== false);
}
