// One figure worked out and put into the unit that was asked for; what cannot be said is an error as data.
import { band } from "../../kernel/band.ts";
import { show, showBand, type System } from "../../kernel/display.ts";
import type { House } from "../../kernel/house.ts";
import { baseShift, fromSI, isFreeAir, type Kind, kindInfo, readUnit, unitFor } from "../../kernel/unit.ts";
import { standardAtmosphere } from "../../kernel/constants.ts";
import { type Worked, type WorkError, workOut } from "../../kernel/work.ts";

export interface WorkedText {
  readonly figure: string;
  /** SI, or in the unit asked for; null when it is without end. */
  readonly value: number | null;
  readonly unit: string;
  readonly text: string;
  /** 5 % and 95 % of what is not known exactly; left out when the value is exact. */
  readonly low?: number | null;
  readonly high?: number | null;
}

export interface WorkFailure {
  readonly code: WorkError["code"] | "case-bad" | "program-error";
  readonly message: string;
  readonly nearest?: string;
}

export const isFailure = <T extends object>(a: T | WorkFailure): a is WorkFailure => "code" in a && "message" in a;

export function workedOut(
  house: House,
  figure: string,
  given: Readonly<Record<string, string>>,
  system: System,
  unit?: string,
): { readonly worked: Worked; readonly text: WorkedText } | WorkFailure {
  let worked: Worked | WorkError;
  try {
    worked = workOut(house, figure, given, system);
  } catch (error) {
    // One figure that goes wrong must not take the other cases with it.
    return {
      code: "program-error",
      message: `the program made a mistake in ${figure}: ${error instanceof Error ? error.message : String(error)}`,
    };
  }
  if (isFailure(worked)) return worked;
  const text = inUnit(worked, system, unit);
  return isFailure(text) ? text : { worked, text };
}

function inUnit({ id, column, amount }: Worked, system: System, asked: string | undefined): WorkedText | WorkFailure {
  const kind = amount.kind as Kind; // an amount carries the name of its kind
  const { nominal, low, high } = band(column);
  const plain = (x: number): number | null => (Number.isFinite(x) ? x : null);
  const spread = column.v.length > 1;
  const converted = asked === undefined ? { of: (x: number) => x, unit: amount.unit, text: null } : converter(kind, asked);
  if (isFailure(converted)) return { ...converted, message: `${id}: ${converted.message}` };
  const { of, unit } = converted;
  const shown =
    asked === undefined
      ? `${nominal === Infinity ? "never" : show(nominal, kind, system).text}${spread && Number.isFinite(high - low) ? ` (${showBand(low, high, kind, system).text})` : ""}`
      : nominal === Infinity
        ? "never"
        : `${Number(of(nominal).toPrecision(shownDigits))} ${unit}`.trim();
  return { figure: id, value: plain(of(nominal)), unit, text: shown, ...(spread ? { low: plain(of(low)), high: plain(of(high)) } : {}) };
}

const shownDigits = 6;

/** From SI into a unit of the kind. */
function converter(kind: Kind, asked: string): { readonly of: (x: number) => number; readonly unit: string } | WorkFailure {
  const info = kindInfo(kind);
  const wanted = asked.trim();
  if (info.unit === "1" && (wanted === "" || wanted === "1")) return { of: (x) => x, unit: "1" };
  const unit = unitFor(wanted, kind);
  const other = isFreeAir(kind) && unit?.base !== undefined && unit.base !== "ANR";
  if (unit && !other)
    return { of: (x) => fromSI(x - baseShift(unit, kind, standardAtmosphere.value), unit, kind !== "temperature"), unit: wanted };
  const read = readUnit(wanted);
  if (!read.ok) {
    const near = read.nearest === undefined ? {} : { nearest: read.nearest };
    return {
      code: "unit-unknown",
      message: `"${wanted}" is no unit; ${info.says} is given in ${info.unit} or such as in ${info.examples[0]}`,
      ...near,
    };
  }
  const says = other ? "free air is given as ANR here" : `"${wanted}" is no unit of ${info.says}`;
  return { code: "unit-mismatch", message: `${says}; try ${info.metric || "1"} or ${info.unit}` };
}
