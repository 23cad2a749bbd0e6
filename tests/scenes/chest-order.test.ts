// @vitest-environment happy-dom
import { Container } from "pixi.js";
import { expect, test } from "vitest";
import { overOrgans } from "../../src/scenes/circuit/painted-chest.ts";

test("every part of the painted chest has one place over the organs", () => {
  const part = () => new Container();
  const chest: Parameters<typeof overOrgans>[0] = {
    heart: part(),
    sewn: part(),
    valves: part(),
    rightHeart: part(),
    rightValves: part(),
  };
  const [blood, vessels] = [
    { behind: part(), front: part() },
    { behind: part(), front: part() },
  ];
  const order = overOrgans(chest, blood, vessels);
  const parts = [chest, blood, vessels].flatMap((each) => Object.values(each));
  expect(new Set(order)).toEqual(new Set(parts));
  expect(order).toHaveLength(parts.length);
});
