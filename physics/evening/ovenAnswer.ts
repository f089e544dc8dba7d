/** What an answer says of oven and plate: the preheat, what it costs, and how long the plate stays hot. */
import { toKWh } from '../quantities/index.ts';
import { zeroCelsius } from '../materials/constants.ts';
import type { PlateMaterial } from '../materials/plates.ts';
import { coolingTime, safeToTouch } from '../plate/cooling.ts';
import { enclosureSides, plateArea } from '../plate/geometry.ts';
import { shownByInfrared, usualSetting } from '../plate/infrared.ts';
import type { PlanAnswer } from './answer.ts';
import type { Evening } from './evening.ts';
import { sampleAt } from '../numerics/samples.ts';
import type { EveningRun } from './run.ts';

const minutes = (seconds: number): number | null => (Number.isFinite(seconds) ? seconds / 60 : null);

/** kg */
export function plateMass({ plate }: Evening, { density }: PlateMaterial): number {
  return density * plateArea(plate) * plate.thickness;
}

/** The preheat in degrees Celsius, minutes and kWh. */
export function preheatAnswer(
  evening: Evening,
  { preheat }: EveningRun,
  material: PlateMaterial,
): PlanAnswer['preheat'] {
  const mass = plateMass(evening, material);
  const room = evening.kitchen.roomTemperature;
  const { trace } = preheat;
  // The plate reflects the ceiling above it, more or less, whoever looks in through the door.
  const around = sampleAt(trace.seconds, trace.ceiling, preheat.plateReady);
  const shown = shownByInfrared({
    surface: preheat.plateTop,
    emissivity: material.emissivity,
    setTo: usualSetting,
    around,
    instrument: room,
  });
  return {
    minutes: preheat.plateReady / 60,
    airReadyMinutes: preheat.airReady / 60,
    settledPlateTopC: preheat.settledPlateTop - zeroCelsius,
    idlePowerW: preheat.idlePower,
    plateTopC: preheat.plateTop - zeroCelsius,
    plateCoreC: preheat.plateCore - zeroCelsius,
    ovenAirC: preheat.ovenAir - zeroCelsius,
    energyKWh: toKWh(preheat.energy),
    biot: preheat.biotNumber,
    plateModel: preheat.plateModel,
    plateMassKg: mass,
    plateHeatJPerK: mass * material.specificHeat(preheat.plateTop),
    plateEnergyKWh: toKWh(
      mass * (material.specificEnthalpy(preheat.plateCore) - material.specificEnthalpy(room)),
    ),
    infrared: {
      plateEmissivity: material.emissivity,
      setTo: usualSetting,
      showsC: shown - zeroCelsius,
    },
  };
}

/** What the energy costs, where the plan has a price. */
export function costAnswer({ kitchen }: Evening, run: EveningRun): Pick<PlanAnswer, 'cost'> {
  if (kitchen.energyPrice === undefined) return {};
  const { perKWh, currency } = kitchen.energyPrice;
  return {
    cost: {
      perKWh,
      currency,
      preheat: perKWh * toKWh(run.preheat.energy),
      evening: perKWh * toKWh(run.energy),
    },
  };
}

/** How long the plate stays hot, in open air and in the shut oven. */
export function coolingAnswer(
  evening: Evening,
  run: EveningRun,
  material: PlateMaterial,
): PlanAnswer['cooling'] {
  const { plate, kitchen } = evening;
  const hottest = Math.max(run.preheat.settledPlateTop, run.preheat.plateTop);
  const open = coolingTime(
    { ...enclosureSides(plate), thickness: plate.thickness, material },
    hottest,
    safeToTouch,
    kitchen.roomTemperature,
  );
  return {
    belowC: safeToTouch - zeroCelsius,
    openAirMinutes: minutes(open),
    shutOvenMinutes: minutes(run.coolInOven),
  };
}
