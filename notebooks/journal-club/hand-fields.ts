import type { HandCount } from "../../src/findings/vote/vote.js";
import { noHands } from "../../src/findings/vote/vote.js";
import { element } from "../../src/notebook/element.js";
import { stepTexts } from "../../src/report/vote/vote-text.js";

/** Fields for the hands of one poll; what is no whole number below 1000 is marked and changes nothing. */
export function handFields(name: string, changed: (count: HandCount) => void) {
  let count: HandCount = noHands;
  const update = (part: Partial<HandCount>): void => {
    count = { ...count, ...part };
    changed(count);
  };
  const steps = stepTexts.map((text, i) =>
    field(
      `hands-${name}-${i}`,
      (n) => update({ expected: count.expected.map((old, at) => (at === i ? n : old)) }),
      text,
    ),
  );
  const would = [
    field(`hands-${name}-yes`, (yes) => update({ yes }), "yes"),
    field(`hands-${name}-no`, (no) => update({ no }), "no"),
  ];
  const group = (legend: string, fields: readonly Field[]): HTMLElement =>
    element("fieldset", { class: "votes" }, element("legend", {}, legend), ...fields.map(({ node }) => node));
  return {
    node: element("div", {}, group("Hands for so many in 100", steps), group("Would you do it?", would)),
    show(next: HandCount): void {
      count = next;
      for (const [i, one] of steps.entries()) one.show(next.expected[i]!);
      would[0]!.show(next.yes);
      would[1]!.show(next.no);
    },
  };
}

interface Field {
  readonly node: HTMLElement;
  readonly show: (n: number) => void;
}

function field(id: string, typed: (n: number) => void, label: string): Field {
  const input = element("input", { type: "text", inputmode: "numeric", autocomplete: "off", id });
  input.addEventListener("input", () => {
    const wrong = !/^\s*\d{0,3}\s*$/.test(input.value);
    input.setAttribute("aria-invalid", String(wrong));
    if (!wrong) typed(Number(input.value));
  });
  return {
    node: element("label", { for: id }, label, input),
    show(n) {
      if (Number(input.value) !== n) input.value = n === 0 ? "" : String(n);
      input.removeAttribute("aria-invalid");
    },
  };
}
