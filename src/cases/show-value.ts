import type { MissingReason, Value } from "./types.js";

const reasons: Readonly<Record<MissingReason, string>> = {
  blank: "blank",
  notDone: "not done",
  notApplicable: "not applicable",
  lost: "lost",
  died: "died",
  unknown: "not known",
};

/** A value in words, for logs, examples and lists of changes; numbers to at most four decimals, as a third of 100 needs. */
export function showValue(value: Value): string {
  switch (value.kind) {
    case "text":
      return value.text;
    case "number": {
      const mark = value.bound === "above" ? ">" : value.bound === "below" ? "<" : value.approximate ? "~" : "";
      const unit =
        value.unit === undefined || value.unit === "share" ? "" : value.unit === "°" ? "°" : ` ${value.unit}`;
      return `${mark}${Number(value.number.toFixed(4))}${unit}`;
    }
    case "date":
      return value.iso;
    case "yesNo":
      return value.yes ? "yes" : "no";
    case "grade":
      return value.sub ? `${value.grade} (${value.sub})` : value.grade;
    case "list":
      return value.items.length === 0 ? "none" : value.items.join("; ");
    case "missing":
      return reasons[value.reason];
    case "asked":
      return "asked";
  }
}
