import { describe, expect, it } from 'vitest';
import { stefanBoltzmann } from '../../../physics/materials/constants.ts';
import { plateMaterial } from '../../../physics/materials/plates.ts';
import { prepareModel } from '../../../physics/evening/model.ts';
import { runPreheat } from '../../../physics/evening/preheat.ts';
import { coolingInShutOven, coolingTime, safeToTouch, skinContact } from '../../../physics/plate/cooling.ts';
import { evening } from '../../support/evenings.ts';

const kelvin = (celsius: number): number => celsius + 273.15;
const size = { width: 0.406, depth: 0.356 } as const;

function stone(thickness: number, conductivity = 2) {
  return {
    ...size,
    thickness,
    material: plateMaterial('custom', 'bare', {
      density: 2000,
      specificHeat: 900,
      thermalConductivity: conductivity,
      emissivity: 0.9,
    }),
  };
}

describe('in open air', () => {
  // Both faces free, 288 degC in 20 degC, McAdams' plates, worked out beforehand by another program: 30, 38, 42 min.
  it.each([
    [60, 30],
    [48, 38],
    [43, 42],
  ])('a stone of 15 mm to %d degC in about %d min', (celsius, minutes) => {
    const ours = coolingTime(stone(0.015), kelvin(288), kelvin(celsius), kelvin(20)) / 60;
    expect(Math.abs(ours / minutes - 1)).toBeLessThan(0.1);
  });
  it('a plate of steel, by its heat over what it can lose: between the bounds of the first and the last loss', () => {
    const material = { ...plateMaterial('carbon-steel', 'bare'), emissivity: 0.9 };
    const room = kelvin(20);
    const [from, to] = [kelvin(288), kelvin(200)];
    const heat = 7850 * 0.0095 * (material.specificEnthalpy(from) - material.specificEnthalpy(to));
    // Radiation alone from both faces and with 20 W/(m2 K) of convection besides: the answer lies between.
    const radiated = (T: number): number => 2 * 0.9 * stefanBoltzmann * (T ** 4 - room ** 4);
    const ours = coolingTime({ ...size, thickness: 0.0095, material }, from, to, room);
    expect(ours).toBeLessThan(heat / radiated(to));
    expect(ours).toBeGreaterThan(heat / (radiated(from) + 20 * (from - room)));
  });
  it('its middle counts: a poor conductor needs longer than a good one of the same heat', () => {
    const good = coolingTime(stone(0.03, 100), kelvin(288), kelvin(43), kelvin(20));
    const poor = coolingTime(stone(0.03, 0.8), kelvin(288), kelvin(43), kelvin(20));
    expect(poor / good).toBeGreaterThan(1.02);
    expect(poor / good).toBeLessThan(1.25);
  });
});

describe('in the shut oven', () => {
  const cooled = (preset: 'european' | 'north-american', thickness: string, room = '21 degC') => {
    const what = evening(preset, {
      kitchen: { roomTemperature: room },
      plate: { width: '36 cm', depth: '32 cm', thickness },
      pizzas: { diameter: '28 cm' },
    });
    const { run } = runPreheat(prepareModel(what), 5400);
    return coolingInShutOven(run, safeToTouch);
  };
  it('takes hours, far longer than in open air, and longer the thicker the plate and the warmer the kitchen', () => {
    const thin = cooled('european', '6 mm');
    const thick = cooled('european', '12.7 mm');
    const open = coolingTime(
      { width: 0.36, depth: 0.32, thickness: 0.006, material: plateMaterial('carbon-steel', 'seasoned') },
      kelvin(260),
      safeToTouch,
      kelvin(21),
    );
    expect(thin).toBeGreaterThan(2 * open);
    expect(thick).toBeGreaterThan(1.15 * thin);
    expect(thick).toBeLessThan(24 * 3600);
    expect(cooled('european', '6 mm', '30 degC')).toBeGreaterThan(1.1 * thin);
  });
  it('never ends in a kitchen as warm as skin may rest on', () => {
    expect(cooled('european', '6 mm', '43 degC')).toBe(Infinity);
  });
  it('counts cool as what skin bears for eight hours, below what it bears for minutes', () => {
    expect(safeToTouch).toBe(kelvin(43));
    expect(skinContact.eightHours).toBeLessThan(skinContact.tenMinutes);
    expect(skinContact.tenMinutes).toBe(kelvin(48));
  });
});
