/** The one door to the cue card. */
export { buildCard, type CardInput, sealCard } from "./build-card.ts";
export { cardBytes } from "./card-bytes.ts";
export { type CardCautions, cardCautions, SAFETY_NOTE } from "./cautions.ts";
export { CARD_FORMAT, type Card, type CardEnvelope, cardSchema, envelopeSchema } from "./schema.ts";
export { shortName } from "./short-name.ts";
export { type Verified, verifyCard } from "./verify-card.ts";
