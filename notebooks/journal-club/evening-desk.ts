import { eveningJson, type EveningFile } from "../../src/findings/club/evening-file.js";
import { button } from "../../src/notebook/element.js";
import type { Notebook } from "../../src/notebook/notebook.js";
import { saveFile } from "../../src/notebook/save.js";
import type { JournalClub } from "./journal-club.js";

export interface EveningDeskOptions {
  readonly votes: () => EveningFile["votes"];
  readonly say: (message: string) => void;
}

/** The button that saves everything typed, to be dropped on the page another day. */
export function saveEvening(notebook: Notebook<JournalClub>, { votes, say }: EveningDeskOptions): HTMLElement {
  const held = ["cards", "note", "series", "grade", "text", "takeHome", "appraisal", "periods"] as const;
  return button("Save the evening", async () => {
    const values = await Promise.all(held.map((name) => notebook.value(name)));
    const typed = Object.fromEntries(held.map((name, i) => [name, values[i]])) as Omit<EveningFile, "votes">;
    saveFile(eveningJson({ ...typed, votes: votes() }), "application/json", "evening.json");
    say("Evening saved, with the votes by their numbers");
  });
}
