/** The persons of the validation table, each solved once. */
import type { Circulation } from "../../sim/circulation/answer/answer.ts";
import { occludeFenestration } from "../../sim/circulation/experiments/test-occlusion.ts";
import { solve } from "../../sim/circulation/solve.ts";
import { type ExchangeCourse, firstDaysRequest, solveExchange } from "../../sim/exchange/index.ts";
import type { Body } from "../../sim/parameters/request.ts";
import { ask, BEFORE, CHILD, healthy, met, person, single } from "./asked.ts";

/** Mean age of Hjortdal 2003. */
const TWELVE: Body = { ageYears: 12.4, bsa: 1.3, haemoglobin: 14 };

export interface Persons {
  readonly before: Circulation;
  readonly child: Circulation;
  readonly childTunnel: Circulation;
  readonly childChamber: Circulation;
  readonly childOpen: Circulation;
  readonly childShut: Circulation;
  readonly childEarly: Circulation;
  readonly childEarlyOpen: Circulation;
  readonly childVentilator: Circulation;
  readonly twelve: Circulation;
  readonly twelveHalf: Circulation;
  readonly twelveWork: Circulation;
  readonly adult: Circulation;
  readonly adultWork: Circulation;
  readonly adultValsalva: Circulation;
  readonly adultCalves: Circulation;
  readonly healthy: Circulation;
  readonly healthyChild: Circulation;
  /** The three weeks after completion, without and with a hole. */
  readonly daysShut: ExchangeCourse;
  readonly daysOpen: ExchangeCourse;
}

function daysAfter(circulation: Circulation): ExchangeCourse {
  const first = firstDaysRequest(circulation.request);
  return solveExchange(circulation, first ? { firstDays: solve(first) } : {});
}

export function solvePersons(): Persons {
  const { open, closed } = occludeFenestration(person("extracardiac", CHILD, { fenestrationDiameter: 4 }));
  const early = (fenestrationDiameter: number) =>
    ask("extracardiac", CHILD, { pulmonaryResistanceIndex: 3, fenestrationDiameter }, "hold-output");
  const twelve = (metabolicEquivalents: number) => ask("extracardiac", TWELVE, met(metabolicEquivalents));
  const child = ask("extracardiac", CHILD);
  return {
    before: ask("glenn", BEFORE),
    child,
    childTunnel: ask("lateral-tunnel", CHILD),
    childChamber: ask("atriopulmonary", CHILD),
    childOpen: open,
    childShut: closed,
    childEarly: early(0),
    childEarlyOpen: early(4),
    childVentilator: ask("extracardiac", CHILD, { breathing: "ventilator" }),
    twelve: twelve(1),
    twelveHalf: twelve(2.25),
    twelveWork: twelve(3.5),
    adult: single(),
    adultWork: single(met(4)),
    adultValsalva: single({ breathing: "valsalva" }),
    adultCalves: single({ calfPumpPressure: 60 }),
    healthy: healthy(),
    healthyChild: ask("two-ventricle", CHILD),
    daysShut: daysAfter(child),
    daysOpen: daysAfter(ask("extracardiac", CHILD, { fenestrationDiameter: 4 })),
  };
}
