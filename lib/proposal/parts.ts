/**
 * The parts of a proposal: each is one change of one item, or of a block's order, with what it was based on and what it
 * would become. Plain data, as it is sent and stored. `null` stands for a value that is left out.
 */
import * as z from "zod/mini";
import { numberFrom, wholeFrom } from "#lib/plan/number-fields.ts";
import { CUE_KINDS, ID_PATTERN, MOST_OF_A_SPRING, moveItemSchema } from "#lib/plan/schema.ts";

/** Our own choice: more than a plate with a long script needs. */
export const MOST_PARTS = 80;
export const MOST_LINE_CHARACTERS = 2000;
/** As many lines as the plan file holds in a script. */
export const MOST_LINES = 200;
/** As many items as the plan file holds. */
const MOST_ITEMS = 2000;

const id = z.string().check(z.regex(ID_PATTERN));
/** Of a part, unique in its proposal; without spaces, because a document notes several in one text. */
const partId = z.string().check(z.regex(/^[a-z][A-Za-z0-9.-]{0,99}$/));
const orNull = <T extends z.ZodMiniType>(schema: T) => z.union([schema, z.null()]);

const wordsSchema = z.strictObject({
  kind: z.enum(CUE_KINDS),
  text: z.string().check(z.minLength(1), z.maxLength(MOST_LINE_CHARACTERS)),
});
/** A line of a script: its place among the lines with words, what it said, and how the document names it, where known. */
const lineRefSchema = z.strictObject({
  ...wordsSchema.shape,
  index: wholeFrom(0, MOST_LINES * 10),
  id: z.optional(z.string().check(z.regex(/^\d{1,16}-\d{1,16}$/))),
});

/** The fields that can be proposed, with what each may hold. */
const FIELDS = {
  /** Of a pause too, which may be 0. */
  seconds: numberFrom(0, 14400),
  side: moveItemSchema.shape.side,
  offsetMm: moveItemSchema.shape.offsetMm.def.innerType,
  facing: moveItemSchema.shape.facing.def.innerType,
  transitionSeconds: moveItemSchema.shape.transitionSeconds.def.innerType,
};
export type ProposedField = keyof typeof FIELDS;
export const PROPOSED_FIELDS = Object.keys(FIELDS) as readonly ProposedField[];

const base = { id: partId };
const onItem = { ...base, item: id };
const field = <F extends ProposedField>(name: F) => {
  const value = orNull(FIELDS[name]);
  return z.strictObject({ ...onItem, kind: z.literal("field"), field: z.literal(name), was: value, becomes: value });
};
const count = wholeFrom(0, MOST_OF_A_SPRING);
const ids = z.array(id).check(z.maxLength(MOST_ITEMS));

const proposalPartSchema = z.union([
  field("seconds"),
  field("side"),
  field("offsetMm"),
  field("facing"),
  field("transitionSeconds"),
  z.strictObject({ ...onItem, kind: z.literal("spring"), spring: id, was: count, becomes: count }),
  z.strictObject({ ...onItem, kind: z.literal("line"), line: lineRefSchema, becomes: wordsSchema }),
  z.strictObject({
    ...onItem,
    kind: z.literal("line-added"),
    /** The line that it follows; null: it comes first. */
    after: orNull(lineRefSchema),
    becomes: wordsSchema,
    /** Lines of the same kind and words before it was added. */
    same: wholeFrom(0, MOST_LINES),
  }),
  z.strictObject({ ...onItem, kind: z.literal("line-removed"), line: lineRefSchema }),
  z.strictObject({
    ...onItem,
    kind: z.literal("line-moved"),
    line: lineRefSchema,
    /** The lines that stay in place around it; null at an end of the script. */
    after: orNull(lineRefSchema),
    before: orNull(lineRefSchema),
  }),
  z.strictObject({
    ...base,
    kind: z.literal("order"),
    /** The heading of the block; null for the items before the first heading. */
    heading: orNull(id),
    was: ids,
    becomes: ids,
  }),
]);

export const proposalPartsSchema = z.array(proposalPartSchema).check(
  z.minLength(1),
  z.maxLength(MOST_PARTS),
  z.refine((parts) => new Set(parts.map((part) => part.id)).size === parts.length, "Two parts have one id."),
);

export type ProposalPart = z.infer<typeof proposalPartSchema>;
export type PartOf<K extends ProposalPart["kind"]> = Extract<ProposalPart, { readonly kind: K }>;
export type LinePart = PartOf<"line" | "line-added" | "line-removed" | "line-moved">;
export type LineRef = z.infer<typeof lineRefSchema>;
export type LineWords = z.infer<typeof wordsSchema>;

/** The document's own names of the lines of each item, in the order of the lines with words. */
export type LineIds = ReadonlyMap<string, readonly string[]>;
export const NO_LINE_IDS: LineIds = new Map();
