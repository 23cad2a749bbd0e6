/** Which model outputs a lesson can name, and how a name finds its number. */

import { entryAt, present } from "../../sim/checked/present.ts";
import type { Circulation } from "../../sim/circulation/answer/answer.ts";
import { nearestMatch } from "../../sim/faults.ts";
import type { FieldReadings } from "../../sim/flow-field/flow-field.ts";
import { currentPath } from "../../sim/parameters/aliases.ts";
import { OUTPUTS } from "../../sim/parameters/outputs.ts";
import { defaultSetting, findParameter, PARAMETERS } from "../../sim/parameters/parameters.ts";
import { BODY_RANGES, type CirculationRequest } from "../../sim/parameters/request.ts";
import type { Lookup } from "./expression.ts";

/** One state's answer as far as it is known. */
export interface Outcome {
  readonly request: CirculationRequest;
  readonly circulation: Circulation | null;
  /** Only on the page, in the panes that show a moving flow. */
  readonly field?: FieldReadings | null;
}

/** A step's own outcome, and by name those it may be compared with ("previous", "second", the lesson's own). */
export interface Situation {
  readonly own: Outcome;
  readonly others: Readonly<Record<string, Outcome | undefined>>;
}

/** State names that need no declaration. */
export const BUILT_IN_STATES = ["previous", "start", "second", "third"] as const;

/** The model's groups whose members are the same in each answer. */
const CLOSED_GROUPS = ["pressures", "flows", "saturations", "pathway", "exchange"];
const FIXED: ReadonlyMap<string, readonly string[]> = new Map([
  ...CLOSED_GROUPS.map(
    (group) =>
      [
        group,
        OUTPUTS.flatMap(({ path }) => (path.startsWith(`${group}.`) ? [path.slice(group.length + 1)] : [])),
      ] as const,
  ),
  ["body", Object.keys(BODY_RANGES)],
  ["shares", ["ivc", "svc"]],
  ["field", ["recirculatingArea", "washOutSeconds"]],
]);
/** Groups whose members only the model's answer can list. */
const OPEN_GROUPS = ["extras", "energy", "ledger"];
const LUNGS = ["left", "right"];

/** The flow in a plane moves the picture; what it would give for these is not the pathway's. */
const NOT_OF_FIELD: Readonly<Record<string, string>> = {
  powerLoss: "pathway.powerLoss: the field, computed in a plane, gives no loss",
  dissipation: "pathway.powerLoss: the field, computed in a plane, gives no loss",
  pressureDrop: "pathway.pressureDrop: the field, computed in a plane, gives no pressure drop",
  shares: "shares.ivc.left and the like: the field, computed in a plane, gives no shares",
};

/** Why a name cannot be meant, or null. `stateNames`: those declared by the lesson. Members of open groups are checked against an answer. */
export function nameFault(
  path: string,
  stateNames: readonly string[],
): { found: string; allowed: string } | null {
  const parts = currentPath(path).split(".");
  const states = [...BUILT_IN_STATES, ...stateNames];
  if (states.includes(entryAt(parts, 0))) parts.shift();
  const [group, member] = parts;
  if (group === undefined || member === undefined)
    return refusal(path, group ?? "", ["pressures.pathway", ...groups(), ...states]);
  if (OPEN_GROUPS.includes(group)) return null;
  if (group === "field" && Object.hasOwn(NOT_OF_FIELD, member))
    return { found: path, allowed: present(NOT_OF_FIELD[member]) };
  const members = group === "set" ? numberParameters() : FIXED.get(group);
  if (!members) return refusal(path, group, [...groups(), ...states]);
  if (!members.includes(member)) return refusal(path, member, members);
  if (group === "shares")
    return parts.length === 3 && LUNGS.includes(entryAt(parts, 2))
      ? null
      : refusal(path, parts[2] ?? "", LUNGS);
  return parts.length > 2 ? refusal(path, member, members) : null;
}

const groups = () => [...FIXED.keys(), "set", ...OPEN_GROUPS];
const numberParameters = () => PARAMETERS.filter(({ kind }) => kind === "number").map(({ name }) => name);

function refusal(path: string, part: string, allowed: readonly string[]) {
  const near = nearestMatch(part, allowed);
  const list = allowed.join(", ");
  return { found: path, allowed: near === undefined ? list : `${list}; nearest: ${near}` };
}

/** Value of `path`, in the unit that `compute` gives; null when there is no value. */
export const lookupIn =
  (situation: Situation): Lookup =>
  (path) => {
    const parts = currentPath(path).split(".");
    if (Object.hasOwn(situation.others, entryAt(parts, 0))) {
      const other = situation.others[present(parts.shift())];
      return other ? read(other, parts) : null;
    }
    return read(situation.own, parts);
  };

function read(outcome: Outcome, [group, ...rest]: readonly string[]): number | null {
  if (group === "body")
    return finite((outcome.request.body as unknown as Record<string, unknown>)[entryAt(rest, 0)]);
  if (group === "set") return setting(outcome.request, entryAt(rest, 0));
  if (group === "field") return memberOf(outcome.field, rest);
  if (!outcome.circulation) return null;
  if (group === "ledger") return fromLedger(outcome.circulation, rest);
  return memberOf(outcome.circulation, [present(group), ...rest]);
}

function memberOf(whole: unknown, parts: readonly string[]): number | null {
  let value = whole;
  for (const part of parts) {
    if (typeof value !== "object" || value === null || !Object.hasOwn(value, part)) return null;
    value = (value as Record<string, unknown>)[part];
  }
  return finite(value);
}

function setting(request: CirculationRequest, name: string): number | null {
  const parameter = findParameter(name);
  return parameter
    ? finite(request.set[name] ?? defaultSetting(parameter, request.stage, request.body))
    : null;
}

/** An element in several branches counts as their sum. */
function fromLedger(circulation: Circulation, parts: readonly string[]): number | null {
  const [quantity, element, branch] = [...parts].reverse();
  if (quantity !== "pressureDrop" && quantity !== "powerLoss" && quantity !== "share") return null;
  const rows = circulation.pathway.ledger.filter(
    (row) => row.element === element && (branch === undefined || row.branch === branch),
  );
  return rows.length === 0 ? null : finite(rows.reduce((sum, row) => sum + row[quantity], 0));
}

const finite = (value: unknown): number | null =>
  typeof value === "number" && Number.isFinite(value) ? value : null;
