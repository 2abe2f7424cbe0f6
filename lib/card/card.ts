/** What other folders usually need of the cue card. */
export { buildCard, sealCard } from "./build-card.ts";
export { cardBytes } from "./card-bytes.ts";
export { SAFETY_NOTE } from "./cautions.ts";
export { type Card, type CardEnvelope, envelopeSchema } from "./schema.ts";
export { shortName } from "./short-name.ts";
export { verifyCard } from "./verify-card.ts";
