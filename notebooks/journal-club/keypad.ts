import type { Answer, Ballot } from "../../src/findings/vote/vote.js";
import { choice } from "../../src/notebook/controls.js";
import { button, element } from "../../src/notebook/element.js";
import { stepTexts } from "../../src/report/vote/vote-text.js";
import type { PollName } from "./vote-desk.js";

export interface KeypadOptions {
  readonly ballots: () => readonly Ballot[];
  readonly cast: (ballots: readonly Ballot[]) => void;
  readonly say: (message: string) => void;
}

/** A ballot on this computer: voters come one by one with a number of their own, and nothing of a vote stays on view. */
export function keypad(name: PollName, { ballots, cast, say }: KeypadOptions) {
  const id = (part: string): string => `keypad-${name}-${part}`;
  const number = element("input", { type: "text", inputmode: "numeric", autocomplete: "off", id: id("voter") });
  const error = element("p", { role: "alert", class: "soft" });
  const choices = element("div");
  let [step, would] = ["", ""];
  const fresh = (): void => {
    [step, would] = ["", ""];
    number.value = "";
    choices.replaceChildren(
      choice(
        "So many in 100",
        [{ value: "", text: "no answer" }, ...stepTexts.map((text, i) => ({ value: String(i), text }))],
        "",
        (value) => (step = value),
        { id: id("step") },
      ),
      choice(
        "Would you do it?",
        ["", "yes", "no"].map((value) => ({ value, text: value || "no answer" })),
        "",
        (value) => (would = value),
        { id: id("would") },
      ),
    );
    number.focus();
  };
  const vote = (): void => {
    const voter = Number(number.value);
    if (!/^\s*\d{1,4}\s*$/.test(number.value) || voter === 0) {
      error.textContent = "A voter's number is a whole number from 1 to 9999.";
      number.focus();
      return;
    }
    if (step === "" && would === "") {
      error.textContent = "Answer one of the two questions.";
      document.getElementById(id("step"))?.focus();
      return;
    }
    const answer: Answer = { step: step === "" ? null : Number(step), would: would === "" ? null : would === "yes" };
    const again = ballots().some((one) => one.voter === voter && one[name] !== null);
    cast(withAnswer(ballots(), voter, { [name]: answer }));
    error.textContent = again ? `Voter ${voter} had voted; the new vote counts.` : "Taken. Next, please.";
    say("Vote taken");
    fresh();
  };
  const title = id("title");
  const node = element("dialog", { class: "keypad", "aria-labelledby": title });
  node.append(
    element("h2", { id: title }, name === "before" ? "First vote" : "Second vote"),
    element("p", {}, "Use the same number both times. Nobody sees whose it is."),
    element("div", { class: "control" }, element("label", { for: id("voter") }, "Your number"), number),
    choices,
    error,
    element(
      "div",
      { class: "bar" },
      button("Vote", vote),
      button("Close", () => node.close()),
    ),
  );
  number.addEventListener("keydown", (event) => {
    if (event.key === "Enter" && (step !== "" || would !== "")) vote();
  });
  return {
    node,
    open(): void {
      error.textContent = "";
      node.showModal();
      fresh();
    },
  };
}

function withAnswer(
  ballots: readonly Ballot[],
  voter: number,
  answer: Partial<Pick<Ballot, "before" | "after">>,
): readonly Ballot[] {
  const old = ballots.find((one) => one.voter === voter) ?? { voter, before: null, after: null };
  return [...ballots.filter((one) => one.voter !== voter), { ...old, ...answer }];
}
