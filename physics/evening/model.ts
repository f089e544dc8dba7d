/**
 * Everything that one simulated evening rests on, prepared once: oven, plate, dial, where the plate settles. Spread,
 * late starts and comparisons make further models that differ in a parameter and share what does not change.
 */
import { allEffects, bakeParameters } from '../bake/parameters.ts';
import type { BakeParameters, Effects } from '../bake/parameters.ts';
import { standardMesh } from '../bake/pizza.ts';
import type { PizzaMesh } from '../bake/pizza.ts';
import { plateMaterial } from '../materials/plates.ts';
import type { PlateMaterial } from '../materials/plates.ts';
import { ovenContext } from '../oven/assembly.ts';
import type { CavityView, OvenContext } from '../oven/assembly.ts';
import { parametersOf } from '../oven/parameters.ts';
import type { OvenParameters } from '../oven/parameters.ts';
import { readDial, settledWithPlate } from '../oven/settled.ts';
import type { Dial, Settled } from '../oven/settled.ts';
import { biotNumber, lumpedLimit, ovenCoefficient, plateCharacteristicLength } from '../plate/biot.ts';
import { enclosureSides } from '../plate/geometry.ts';
import type { Evening } from './evening.ts';

/** Steps (s) and cells; a test halves and doubles them. */
export interface Resolution {
  readonly preheatStep: number;
  readonly bakeStep: number;
  readonly recoveryStep: number;
  /** of the pizza in a step, as `Column` counts it */
  readonly allowedStrain: number;
  readonly plateLayers: number;
  readonly mesh: PizzaMesh;
}

/** What a plan is computed with. */
export const standardResolution: Resolution = {
  preheatStep: 5,
  bakeStep: 3,
  recoveryStep: 4,
  allowedStrain: 1.5,
  plateLayers: 5,
  mesh: standardMesh,
};

export interface ModelOptions {
  readonly oven?: Partial<OvenParameters>;
  readonly bake?: Partial<BakeParameters>;
  readonly effects?: Partial<Effects>;
  readonly resolution?: Partial<Resolution>;
  /** overrides the choice by the Biot number */
  readonly plateModel?: 'lumped' | 'slab';
  /** emissivity of the plate, where it is not the material's own */
  readonly plateEmissivity?: number;
  /** geometry computed before for the same cavity and plate */
  readonly views?: { readonly emptyView: CavityView; readonly plateView: CavityView };
  /** for spreads: how the dial of the unvaried oven was corrected */
  readonly dial?: Omit<Dial, 'target'>;
}

/** An evening ready to be simulated; nothing in it changes while it is. */
export interface EveningModel {
  readonly evening: Evening;
  readonly context: OvenContext;
  readonly material: PlateMaterial;
  readonly bake: BakeParameters;
  readonly resolution: Resolution;
  readonly dial: Dial;
  readonly settled: Settled;
  readonly biotNumber: number;
  readonly plateModel: 'lumped' | 'slab';
}

/** K within which a plate counts as settled */
export const readyTolerance = 5;

function modelOf(asked: Evening['plate']['model'], bi: number): 'lumped' | 'slab' {
  if (asked !== 'auto') return asked;
  return bi < lumpedLimit ? 'lumped' : 'slab';
}

/** What bakes in this kitchen have shown comes on top of everything else that is said of browning. */
function learnedBake(bake: BakeParameters, { pizzas }: Evening): BakeParameters {
  return { ...bake, browningFactor: bake.browningFactor * (pizzas.browningRate ?? 1) };
}

/**
 * Prepares an evening: parameters of its oven, geometry, dial, where the plate settles, lumped or in layers.
 *
 * @throws OutOfRange for an oven or a plate that cannot be computed
 */
export function prepareModel(evening: Evening, options: ModelOptions = {}): EveningModel {
  const parameters: OvenParameters = { ...parametersOf(evening.oven), ...options.oven };
  const effects: Effects = { ...allEffects, ...options.effects };
  const resolution: Resolution = { ...standardResolution, ...options.resolution };
  const context = ovenContext(evening, parameters, effects, options.views);
  const { plate, oven } = evening;
  const own = plateMaterial(plate.material, plate.surface, plate.custom);
  const material: PlateMaterial =
    options.plateEmissivity === undefined ? own : { ...own, emissivity: options.plateEmissivity };
  // Means over whole cycles need no fine steps.
  const cycleStep = 2 * resolution.preheatStep;
  const empty = readDial(context, cycleStep, options.dial);
  const sides = enclosureSides(plate);
  const bi = biotNumber(
    ovenCoefficient(material.emissivity, oven.setpoint),
    plateCharacteristicLength(sides.width, sides.depth, plate.thickness),
    material.thermalConductivity(oven.setpoint),
  );
  const plateModel = options.plateModel ?? modelOf(plate.model, bi);
  const settled = settledWithPlate(
    context,
    material,
    empty,
    plateModel === 'lumped' ? 1 : resolution.plateLayers,
    cycleStep,
    options.dial?.plateOvershoot,
  );
  const dial: Dial = { ...empty, plateOvershoot: settled.overshoot };
  return {
    evening,
    context,
    material,
    bake: learnedBake({ ...bakeParameters, ...options.bake }, evening),
    resolution,
    dial,
    settled,
    biotNumber: bi,
    plateModel,
  };
}
