import type { Regrading } from "../../findings/regrading/types.js";
import { listText } from "../number-text.js";
import { numberText } from "./how-the-arm-moves.js";

type Room = { readonly cuts: readonly number[]; readonly cut: number; readonly conclusion: string } & Record<
  "down" | "up",
  { readonly changesAt: number | null; readonly becomes: string | null }
>;

/** How far the cut-points can move before the direction of the trend, and of the comparison, turns. */
export function cutMovesText({ moves }: Regrading): string {
  if ("estimate" in moves) return `How far the cut-points can move is not told: ${moves.because}.`;
  const comparison =
    "estimate" in moves.comparison
      ? ` Closed against open is not tried: ${moves.comparison.because}.`
      : ` ${said("Closed against open, within grades", moves.comparison)}`;
  return `${said("Over the grades", moves.trend)}${comparison}`;
}

function said(subject: string, rooms: readonly Room[]): string {
  const { conclusion } = rooms[0]!;
  const turns = rooms.flatMap(({ cuts, cut, down, up }) => {
    const at = numberText(cuts[cut]!);
    return [
      ...(down.changesAt === null
        ? []
        : [`the cut-point at ${at} falls below ${numberText(down.changesAt)} (${down.becomes})`]),
      ...(up.changesAt === null ? [] : [`the cut-point at ${at} rises to ${numberText(up.changesAt)} (${up.becomes})`]),
    ];
  });
  if (turns.length === 0) return `${subject}: ${conclusion}, wherever one cut-point is put between its neighbours.`;
  return `${subject}: ${conclusion}, until ${listText(turns, "or")}.`;
}
