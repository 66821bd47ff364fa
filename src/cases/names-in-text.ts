import { headingRole } from "./table/heading-words.js";
import { isTitleWord } from "./plain-words.js";

const titles = "Dr|Doctor|Mr|Mrs|Ms|Miss|Prof|Professor|Herr|Frau|Nurse|Sister|Mme|Mlle|Dra|Sra|Dott|Mister";
const surname = "\\p{Lu}[\\p{L}'’-]{2,}";
const places: readonly RegExp[] = [
  new RegExp(`\\b(?:${titles})\\.? +(?:\\p{Lu}\\.? *){0,2}(${surname}(?: ${surname})?)`, "gu"),
  new RegExp(
    `\\b(?:by|[Ss]urgeon|[Oo]perator|[Cc]onsultant|[Aa]uthor|[Cc]ontact|[Rr]egistrar|[Ff]ellow|[Ss]upervisor|(?:[Pp]atients|[Cc]ases|[Ss]eries) of|[Cc]hirurg|[Oo]pérateur)\\s*[:=-]? +(?:\\p{Lu}\\.? *){0,2}(${surname}(?: ${surname})?)`,
    "gu",
  ),
  new RegExp(
    `(${surname}(?: ${surname})?)['’]s? +(?:patients?|cases|series|list|mum|mother|mom|father|dad|parents?|brother|sister|school|sheet|data|copy|version|file|clinic|phone|gp)\\b`,
    "gu",
  ),
];
/** Words of names of people in free lines: after a title, before "'s patients", after "by" or "surgeon". */
export function namesInText(texts: Iterable<string>): string[] {
  const words = new Set<string>();
  for (const text of texts) {
    if (!/\p{Lu}/u.test(text)) continue;
    const plain = text.slice(0, 2000).replace(/[_|]+/g, " ");
    for (const place of places)
      for (const match of plain.matchAll(place))
        for (const word of match[1]!.split(/[ '’-]+/))
          if (word.length >= 3 && /^\p{Lu}/u.test(word) && !isTitleWord(word) && headingRole(word) === undefined)
            words.add(word);
    for (const word of wholeName(text)) words.add(word);
  }
  return [...words];
}

/** A line that is nothing but two or three words with capitals, none of the trade: "Ann Zorvia", "Zorvia, Ann". */
function wholeName(text: string): string[] {
  if (!/^\p{Lu}[\p{Ll}'’-]+,? \p{Lu}[\p{Ll}'’-]+( \p{Lu}[\p{Ll}'’-]+)?$/u.test(text)) return [];
  const words = text.split(/[ ,]+/);
  return words.every((word) => !isTitleWord(word) && headingRole(word) === undefined) ? words : [];
}
