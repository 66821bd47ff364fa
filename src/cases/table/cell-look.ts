/** How a text looks before any role is known; used to tell headings, cases and footers apart. */
export type Look = "blank" | "number" | "date" | "code" | "word" | "sentence";

const number = /^[<>~≤≥±]?\s*[-−+]?(\d[\d ',.]*)?\d\s*(%|°|mm|cm|deg|m|y|yrs?)?$/i;
const date =
  /^(?:\p{L}{2,9}\.?,? )?\d{1,4}[./-]\d{1,2}[./-]\d{1,4}([T ,]+\d{1,2}:\d{2}(:\d{2}(\.\d+)?)?( ?[ap]m)?Z?)?$|^\d{1,2}[ .-]{0,2}(jan|feb|mar|apr|may|jun|jul|aug|sep|oct|nov|dec|jän|mär|mrz|mai|juni|juli|okt|dez)\w*\.?[ .-]?(\d{2,4})?$/iu;
const short = /^(y|n|yes|no|l|r|m|f|left|right|true|false|i{1,3}|iv|vi{0,3}|x|\?|-|na|n\/a|\d{1,2}[a-d])$/i;

export function cellLook(text: string): Look {
  if (text === "") return "blank";
  if (text.length > 60 || text.split(" ").length > 6) return "sentence";
  if (date.test(text)) return "date";
  if (number.test(text)) return "number";
  if (short.test(text) || (/\d/.test(text) && !text.includes(" "))) return "code";
  return "word";
}
