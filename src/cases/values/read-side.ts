import type { Value } from "../types.js";
import { readMissing } from "./read-missing.js";
import { ask, notKnown, unreadable, type Choice, type Reader } from "./reading.js";

const left: Value = { kind: "text", text: "left" };
const right: Value = { kind: "text", text: "right" };

/** Side of the limb: "left" or "right". Both sides in one row is asked: one limb or two is a denominator. */
export const readSide: Reader = (text) => {
  const gone = readMissing(text);
  if (gone) return gone;
  const plain = text.toLowerCase().replace(/[.\s]+$/, "");
  const why = plain === text ? {} : { why: "side" };
  if (/^(l|lt|left|li|links|g|gauche|izq(uierda)?|sinistra|sin|s|left side)$/.test(plain))
    return { value: left, why: "side", ...(text === "left" ? why : {}) };
  if (/^(r|rt|right|re|rechts|d|dr|droite?|der|dcha|dcho|dch|derech[ao]|destr[ao]|right side)$/.test(plain))
    return { value: right, why: "side", ...(text === "right" ? why : {}) };
  const choices: Choice[] = [
    { label: "left", value: left },
    { label: "right", value: right },
  ];
  if (/^(b|bl|b\/l|bi|both|bilat(eral)?|bds|beide(rseits)?|l ?[/+&,] ?r|r ?[/+&,] ?l|2)$/.test(plain))
    return ask("both", text, `"${text}" means both sides in one row: two limbs of one child?`, [
      { label: "two limbs", value: { kind: "text", text: "both" } },
      ...choices.map((choice) => ({ ...choice, label: `one limb, ${choice.label}` })),
      notKnown,
    ]);
  const led = /^(l|lt|left|r|rt|right|li|re|links|rechts|both|bilateral)\b/.exec(plain)?.[1];
  if (led === "both" || led === "bilateral" || /\b(l|left)\b.*\b(r|right)\b|\b(r|right)\b.*\b(l|left)\b/.test(plain))
    return ask("both", text, `"${text}" names both sides: two limbs of one child?`, [
      { label: "two limbs", value: { kind: "text", text: "both" } },
      ...choices.map((choice) => ({ ...choice, label: `one limb, ${choice.label}` })),
      notKnown,
    ]);
  if (led !== undefined)
    return ask("value", text, `"${text}" is a side with a remark: which side?`, [
      ...(led.startsWith("l") ? choices : choices.toReversed()),
      notKnown,
    ]);
  return unreadable(text, "a side", choices);
};
