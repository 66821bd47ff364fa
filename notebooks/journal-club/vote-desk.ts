import type { EveningFile } from "../../src/findings/club/evening-file.js";
import { noHands, type Vote } from "../../src/findings/vote/vote.js";
import { choice } from "../../src/notebook/controls.js";
import { button, element } from "../../src/notebook/element.js";
import type { Notebook } from "../../src/notebook/notebook.js";
import { handFields } from "./hand-fields.js";
import type { JournalClub } from "./journal-club.js";
import { keypad } from "./keypad.js";

export type PollName = "before" | "after";

/** All votes typed so far, whichever way they are counted. */
type Votes = EveningFile["votes"];

/** Where votes are typed, for both polls, with every step taken back one by one. */
export function voteDesk(notebook: Notebook<JournalClub>, say: (message: string) => void) {
  let typed: Votes = { kind: "hands", before: noHands, after: noHands, ballots: [] };
  const past: Votes[] = [];
  const polls = { before: pollDesk("before"), after: pollDesk("after") };
  const show = (): void => {
    polls.before.show();
    polls.after.show();
  };
  const set = (next: Votes): void => {
    typed = next;
    const { kind, before, after, ballots } = typed;
    notebook.set("vote", kind === "hands" ? { kind, before, after } : { kind, ballots });
  };
  const change = (part: Partial<Votes>): void => {
    past.push(typed);
    set({ ...typed, ...part });
  };
  const undo = (): void => {
    const last = past.pop();
    if (last === undefined) return say("Nothing to undo");
    set(last);
    show();
    say("Undone");
  };
  show();
  return {
    nodeOf: (name: PollName): HTMLElement => polls[name].node,
    undo,
    votes: (): Votes => typed,
    /** Votes of a saved evening take the place of those typed; undo brings these back. */
    take(votes: Votes): void {
      change(votes);
      show();
    },
  };

  function pollDesk(name: PollName) {
    const how = element("div");
    const fields = handFields(name, (count) => change({ [name]: count }));
    const pad = keypad(name, {
      ballots: () => typed.ballots,
      cast: (ballots) => change({ ballots }),
      say,
    });
    document.body.append(pad.node);
    const open = button("Open the keypad", () => pad.open(), `Open the keypad, ${name}`);
    const showPoll = (): void => {
      const options = [
        { value: "hands", text: "hands, counted" },
        { value: "ballots", text: "numbered voters at the keypad" },
      ];
      const changed = (kind: string): void => {
        change({ kind: kind as Vote["kind"] });
        show();
        document.getElementById(`vote-by-${name}`)?.focus();
      };
      how.replaceChildren(choice("Votes by", options, typed.kind, changed, { id: `vote-by-${name}` }));
      fields.node.hidden = typed.kind !== "hands";
      open.hidden = typed.kind !== "ballots";
      fields.show(typed[name]);
    };
    return {
      node: element("div", {}, how, fields.node, element("div", { class: "pad-bar" }, open)),
      show: showPoll,
    };
  }
}
