import type { Section } from "../text.js";

/** One question of the evening: a section, and what only the presenter reads. */
export interface Screen extends Section {
  readonly notes: readonly string[];
  /** Minutes it takes of the twenty. */
  readonly minutes: number;
}
