/** Holds the facts that a script shows for node views, which live outside React, and tells them when the plan changed. */
import { type ItemFacts, NO_FACTS } from "#lib/editor/item-facts.ts";

export class FactsBox {
  facts: ItemFacts = NO_FACTS;
  private readonly listeners = new Set<() => void>();

  set(facts: ItemFacts): void {
    this.facts = facts;
    for (const listener of this.listeners) listener();
  }

  subscribe(listener: () => void): () => void {
    this.listeners.add(listener);
    return () => this.listeners.delete(listener);
  }
}
