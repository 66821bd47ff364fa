import type { MissingReason } from "../types.js";
import type { Reading } from "./reading.js";

const words: readonly (readonly [MissingReason, RegExp])[] = [
  [
    "lost",
    /^(lost|ltfu|ltf|lfu|l ?t ?f ?u|lost to (f ?\/? ?u|follow.?up|fup)|loss to follow.?up|moved( away| abroad| out)?|emigrated|left (the )?country|untraceable|withdrawn|withdrew|dropped out|drop ?out|uncontactable|not (traced|traceable|contactable)|no (contact|reply|response)|transferred( out)?|verloren|verzogen|unbekannt verzogen|perdu( de vue)?|perdido)$/,
  ],
  ["died", /^(died|dead|deceased|death|passed away|rip|r\.i\.p\.?|†|verstorben|tot|gestorben|decede|fallecido)$/],
  [
    "notDone",
    /^(not (done|performed|measured|assessed|tested|taken|examined|obtained|attended|seen|imaged)|nd|n\.d\.?|n\/d|np|not recorded as done|no (x-?ray|film|radiograph|image|exam(ination)?|review|visit)|did not attend|dna|d\.n\.a\.?|did not come|no show|fta|failed to attend|missed( visit| appointment)?|cancelled|canceled|refused|declined|unable( to test)?|nicht (gemacht|erhoben|gemessen|durchgefuhrt)|non fait|no realizado)$/,
  ],
  [
    "notApplicable",
    /^(n ?\/ ?a|na|n\.a\.?|n\.a|not applicable|not relevant|inapplicable|entfallt|entf\.?|sans objet|no aplica)$/,
  ],
  [
    "unknown",
    /^(unknown|unk|ukn|unkn|u\/k|not known|nk|n\.k\.?|not recorded|nr|n\.r\.?|not stated|not available|missing|miss|no data|no info(rmation)?|no record|illegible|unclear|unsure|uncertain|null|none recorded|nan|unbekannt|inconnu|desconocido|fehlt|k\.?a\.?|\.|\.\.|\.\.\.|…|[-–—]{1,3}|_+)$/,
  ],
];

const digit = /\d/;

const why: Readonly<Record<MissingReason, string>> = {
  blank: "blank",
  lost: "lost to follow-up",
  died: "died",
  notDone: "not done",
  notApplicable: "not applicable",
  unknown: "not known",
};

/** The kinds of missing kept apart: blank, lost, died, not done, not applicable, not known; undefined for any other text. */
export function readMissing(text: string): Reading | undefined {
  if (text === "") return blank;
  if (text.length > 40 || digit.test(text)) return undefined;
  const plain = text.normalize("NFD").replace(/\p{M}/gu, "").toLowerCase().trim();
  for (const [reason, pattern] of words)
    if (pattern.test(plain)) return { value: { kind: "missing", reason }, why: `means ${why[reason]}` };
  return undefined;
}

const blank: Reading = { value: { kind: "missing", reason: "blank" } };
