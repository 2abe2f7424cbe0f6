/** The shape of a month file. What a schema cannot say is in `cross-check.ts`. */
import * as z from "zod/mini";
import { dayNumber } from "#lib/calendar/days.ts";
import { isTimeZone } from "#lib/calendar/zone.ts";
import { numberFrom, wholeFrom } from "#lib/plan/number-fields.ts";
import { FINDING_LEVELS, GROUPS } from "#lib/plan/schema.ts";
import { monthLimitsSchema } from "../limits.ts";
import { COACH_ROLES, MONTH_FORMAT } from "../types.ts";
import {
  dateField,
  endTimeField,
  idField,
  instantField,
  lineIdField,
  onceEach,
  timeField,
  upwards,
  uuidField,
} from "./fields.ts";

const MOST_DAYS = 62;
const MOST_KNOWN = 28;

const text = z.string();
const orNull = <T extends z.core.SomeType>(of: T) => z.optional(z.nullable(of));
/** Seconds and the like; nothing about a class is larger. */
const amount = numberFrom(0, 1e9);
const days = onceEach(wholeFrom(1, 7));
const byGroup = <T extends z.core.SomeType>(of: T) => z.partialRecord(z.enum(GROUPS), of);
const ids = onceEach(idField);

type Dates = { readonly from: string; readonly to: string; readonly known?: string | undefined };
/** No day at all is told of by its own field. */
const apart = (a: string, b: string): number => dayNumber(b) - dayNumber(a);

const dates = z.strictObject({ from: dateField, to: dateField, known: z.optional(dateField) }).check(
  upwards<Dates>(),
  z.refine<Dates>(({ from, to }) => !(apart(from, to) >= MOST_DAYS), {
    message: `should be at most ${MOST_DAYS} days with \`from\``,
    path: ["to"],
  }),
  z.refine<Dates>(({ from, known = from }) => !(apart(known, from) < 0 || apart(known, from) > MOST_KNOWN), {
    message: `should be at most ${MOST_KNOWN} days before \`from\`, and not after it`,
    path: ["known"],
  }),
);

/** "Europe/Lisbon"; a bare offset is no zone. */
const isZoneName = (zone: string): boolean => /^[A-Za-z]/.test(zone) && isTimeZone(zone);

const room = z.strictObject({ name: text, machines: wholeFrom(1, 200), equipment: idField });
const free = z.strictObject({ days, from: timeField, to: endTimeField }).check(upwards());
const away = z.strictObject({ from: dateField, to: dateField, why: z.optional(text) }).check(upwards());
const coach = z.strictObject({
  name: text,
  roles: onceEach(z.enum(COACH_ROLES)),
  free: z.optional(onceEach(free)),
  away: z.optional(onceEach(away)),
});
const regulars = z.strictObject({ name: text, people: z.optional(wholeFrom(1, 500)) });
const theme = z.strictObject({
  name: text,
  promised: z.optional(z.int().check(z.minimum(0))),
  shares: z.optional(byGroup(numberFrom(0, 1))),
});
const plan = z.union([
  z.strictObject({
    title: text,
    known: z.optional(z.literal(true)),
    seconds: amount,
    signed: z.boolean(),
    edition: z.optional(z.int().check(z.minimum(1))),
    sha256: z.optional(text),
    equipment: idField,
    groups: byGroup(amount),
    moves: z.record(idField, amount),
    push: amount,
    pull: amount,
    metMinutes: amount,
    talkSeconds: amount,
  }),
  z.strictObject({ title: text, known: z.literal(false) }),
]);

const slotValues = {
  start: timeField,
  minutes: wholeFrom(5, 480),
  room: orNull(idField),
  coach: orNull(idField),
  regulars: z.optional(ids),
  theme: orNull(idField),
  plan: orNull(idField),
  people: z.optional(wholeFrom(0, 500)),
  locked: z.optional(z.boolean()),
  note: z.optional(text),
};
const slot = z.strictObject({
  id: idField,
  date: dateField,
  ...slotValues,
  out: z.optional(z.boolean()),
  changedAt: z.optional(instantField),
  sequence: z.optional(z.int().check(z.minimum(0))),
  formerCoaches: z.optional(ids),
  formerRooms: z.optional(ids),
});

const ordinal = wholeFrom(-5, 5).check(z.refine((k) => k !== 0, "should be a whole number from -5 to 5, but not 0"));
const line = z
  .strictObject({
    id: lineIdField,
    days: days.check(z.refine((list) => list.length > 0, "should name at least one day")),
    every: z.optional(wholeFrom(1, 8)),
    weekStart: z.optional(z.literal([1, 7])),
    nth: z.optional(onceEach(ordinal)),
    from: z.optional(dateField),
    to: z.optional(dateField),
    count: z.optional(wholeFrom(1, 400)),
    except: z.optional(onceEach(dateField)),
    ...slotValues,
  })
  .check(
    upwards(),
    z.refine(({ every = 1, nth }) => every === 1 || nth === undefined, {
      message: "should be 1 or left out beside `nth`",
      path: ["every"],
    }),
  );

const weight = z.optional(wholeFrom(0, 10_000));

export const monthSchema = z.strictObject({
  format: z.literal(MONTH_FORMAT),
  title: text,
  studio: z.strictObject({ uid: uuidField, name: text }),
  zone: text.check(z.refine(isZoneName, "should be the IANA name of a time zone, such as Europe/Lisbon")),
  changedAt: instantField,
  dates,
  asOf: z.optional(dateField),
  holidays: z.optional(z.record(dateField, text)),
  rooms: z.record(idField, room),
  coaches: z.record(idField, coach),
  regulars: z.record(idField, regulars),
  themes: z.optional(z.record(idField, theme)),
  plans: z.record(idField, plan),
  pattern: z.optional(z.array(line)),
  slots: z.array(slot),
  limits: z.optional(monthLimitsSchema),
  standards: z.optional(z.record(idField, z.strictObject({ level: z.enum([...FINDING_LEVELS, "off"]) }))),
  weights: z.optional(z.strictObject({ must: weight, look: weight, info: weight, likeness: weight, wish: weight })),
  fill: z.optional(
    z.strictObject({
      slots: z.optional(ids),
      plans: z.optional(ids),
      wishes: z.optional(onceEach(z.strictObject({ slot: idField, plan: idField, weight }))),
      mostUses: z.optional(z.int().check(z.minimum(1))),
    }),
  ),
});
