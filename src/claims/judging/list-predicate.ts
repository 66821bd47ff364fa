import type { SentenceReading } from "../reading/read-sentence.js";

const happening = new Set(
  "had has have having returned did needed required underwent showed lost failed developed sustained received reported was were is are who whom that which without with after before at during under over above below aged older younger responded agreed refused declined answered played in".split(
    " ",
  ),
);
const enrolling = new Set(
  "included enrolled enlisted treated studied reviewed recruited identified analysed analyzed involved affected injured examined assessed registered evaluated seen operated found present".split(
    " ",
  ),
);
const belonging = new Set(
  "all total cohort series sample study population the this our these those patients children cases".split(" "),
);

/**
 * Whether something happens to the parts listed before `at`: "12 boys and 9 girls had a fall" counts some of the cases,
 * "45 boys and 35 girls were included" all of them.
 */
export function predicated({ tokens }: SentenceReading, at: number): boolean {
  for (let i = at; i < at + 8; i++) {
    const token = tokens[i];
    if (!token || (token.kind === "mark" && token.text !== "%" && token.text !== "(")) return false;
    if (token.text === "respectively" || token.text === "and") return false;
    if (token.text === "in" && belonging.has(tokens[i + 1]?.text ?? "")) return false;
    if (token.text === "with" && ["a", "mean", "median", "an"].includes(tokens[i + 1]?.text ?? "")) {
      const next = tokens.slice(i + 1, i + 4).map(({ text }) => text);
      return !next.some((word) => word === "mean" || word === "median" || word === "average");
    }
    if (happening.has(token.text)) return !tokens.slice(i + 1, i + 4).some(({ text }) => enrolling.has(text));
  }
  return false;
}
